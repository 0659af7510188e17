/** Needles that are kept where they are, and the rule that found them, to go back to. */
import type { Slot } from '@shared/bed/index.ts';
import { planFor } from '@shared/plan/index.ts';
import { bandsOf, type Band, type ByHand } from '@shared/pattern/index.ts';
import { afterChange, changeOf, pieceIn, setPattern, type Change, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf } from '../planned.ts';

/** The band's groups by hand from these needles on; it remembers the rule that it had. */
export function byHandIn({ rule, choice }: Band, first: readonly Slot[]): ByHand {
  const before = rule.kind === 'by-hand' ? rule.before : { rule, choice };
  return before ? { kind: 'by-hand', first, before } : { kind: 'by-hand', first };
}

/**
 * The change that keeps the needles of a band as they are, or gives them back
 * to the rule they were kept from; null where there is neither. A choice that
 * is no longer there becomes the best one.
 */
export function keepChange(project: ProjectAt, index: number): Change | null {
  const band = bandsOf(project)[index];
  if (!band) return null;
  if (band.rule.kind === 'by-hand') {
    const { before } = band.rule;
    if (!before) return null;
    const back = changeOf('free-needles', setPattern(project, 'band', index, before));
    if (planFor(pieceIn(afterChange(project, back))).ok) return back;
    return changeOf('free-needles', setPattern(project, 'band', index, { ...before, choice: 0 }));
  }
  const first = firstNeedles(project, index);
  return (
    first && changeOf('keep-needles', setPattern(project, 'band', index, { rule: byHandIn(band, first), choice: 0 }))
  );
}

/** What keeping or giving back is called for a band as it is; null where there is neither. */
export function keepLabel(project: ProjectAt, index: number): string | null {
  const rule = bandsOf(project)[index]?.rule;
  if (rule?.kind !== 'by-hand') return firstNeedles(project, index) ? words.commands['keep-needles'](null) : null;
  return rule.before ? words.commands['keep-needles'](words.placement.rules[rule.before.rule.kind].name) : null;
}

export function keepOrFree(session: Session, index: number): void {
  const change = keepChange(session.current, index);
  if (!change) return;
  session.change(change);
  const first = firstNeedles(session.current, index);
  const text = words.moving.keep;
  if (!first) session.announce(text.freedNowhere);
  else session.announce(change.name === 'keep-needles' ? text.kept(first) : text.freed(first));
}

function firstNeedles(project: ProjectAt, index: number): readonly Slot[] | null {
  const placed = bandsOf(plannedOf(project).plan)[index];
  const taken = placed?.choices[placed.taken];
  return taken ? taken.groups.map(({ block }) => block.first) : null;
}
