/** Commands that go from finding to finding. */
import type { Gathered } from '@shared/check/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type ActionsOf } from '../../commands/command.ts';

/** What the commands need of the bench. */
export interface Found {
  /** As the panel has them; null as long as they are not known. */
  readonly findings: readonly Gathered[] | null;
  /** The one that is shown. */
  readonly finding: Gathered | null;
  lookAtFinding(finding: Gathered): void;
}

export function findingActions(found: Found, announce: (text: string) => void): ActionsOf<'findings'> {
  const whyNot = unless(() => (found.findings?.length ?? 0) > 0, words.whyNot.noFindings);
  const walk = (step: 1 | -1): void => {
    const next = findingAfter(found.findings ?? [], found.finding, step);
    if (!next) return;
    found.lookAtFinding(next);
    announce(words.piece.stage.findingOf((found.findings ?? []).indexOf(next) + 1, found.findings?.length ?? 0));
  };
  return {
    'finding-next': { whyNot, run: () => walk(1) },
    'finding-before': { whyNot, run: () => walk(-1) },
  };
}

/** The finding after `now` in the list, or the one before it, round and round; with none shown, the first or the last. */
export function findingAfter(findings: readonly Gathered[], now: Gathered | null, step: 1 | -1): Gathered | null {
  const at = findings.findIndex(({ kind }) => kind === now?.kind);
  const next = at < 0 ? (step > 0 ? 0 : findings.length - 1) : (at + step + findings.length) % findings.length;
  return findings[next] ?? null;
}
