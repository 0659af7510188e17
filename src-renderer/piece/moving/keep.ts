/** Needles that are kept where they are, and the rule that found them, to go back to. */
import type { Slot } from '@shared/bed/index.ts';
import { planFor } from '@shared/plan/index.ts';
import { bandsOf, type Band, type ByHand, type SolvedRule } from '@shared/pattern/index.ts';
import { afterChange, changeOf, pieceIn, setPattern, type Change, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf } from '../planned.ts';

/** The band's groups by hand from these needles on; it remembers the rule that it had. */
export function byHandIn({ rule, choice }: Band, first: readonly Slot[]): ByHand {
  const before = rule.kind === 'by-hand' ? rule.before : { rule, choice };
  return before ? { kind: 'by-hand', first, before } : { kind: 'by-hand', first };
}

/** The change that keeps the needles of a band as they are; null where there are none, or they are kept already. */
export function keepChange(project: ProjectAt, index: number): Change | null {
  const band = bandsOf(project)[index];
  if (!band || band.rule.kind === 'by-hand') return null;
  const first = firstNeedles(project, index);
  return (
    first && changeOf('keep-needles', setPattern(project, 'band', index, { rule: byHandIn(band, first), choice: 0 }))
  );
}

/**
 * The change that gives the needles of a band back to the rule that they were
 * kept or moved from; null where there is none. A choice that is no longer
 * there becomes the best one.
 */
export function freeChange(project: ProjectAt, index: number): Change | null {
  const before = placedBefore(project, index);
  if (!before) return null;
  const back = changeOf('free-needles', setPattern(project, 'band', index, before));
  if (planFor(pieceIn(afterChange(project, back))).ok) return back;
  return changeOf('free-needles', setPattern(project, 'band', index, { ...before, choice: 0 }));
}

/** Why the needles of a band cannot be kept now, in words, or null. */
export function whyNotKeep(project: ProjectAt, index: number): string | null {
  if (bandsOf(project)[index]?.rule.kind === 'by-hand') return words.whyNot.needlesKept;
  return firstNeedles(project, index) ? null : words.whyNot.needlesOpen;
}

/** Why they cannot be given back to a rule, in words, or null. */
export function whyNotFree(project: ProjectAt, index: number): string | null {
  const band = bandsOf(project)[index];
  if (!band) return words.whyNot.needlesOpen;
  if (band.rule.kind !== 'by-hand') return words.whyNot.ruleStands;
  return band.rule.before ? null : words.whyNot.noRuleBefore;
}

/** The rule that places the groups of a band, or would again; null by hand where none found the needles. */
export function ruleOf(project: ProjectAt, index: number): SolvedRule | null {
  const rule = bandsOf(project)[index]?.rule;
  return rule?.kind === 'by-hand' ? (placedBefore(project, index)?.rule ?? null) : (rule ?? null);
}

/** Keeps the needles of a band, and says so. */
export function keepNeedles(session: Session, index: number): void {
  const change = keepChange(session.current, index);
  if (!change) return;
  session.change(change);
  const first = firstNeedles(session.current, index);
  if (first) session.announce(words.moving.keep.kept(first));
}

/** Gives the needles of a band back to their rule, and says where it places the groups. */
export function freeNeedles(session: Session, index: number): void {
  const change = freeChange(session.current, index);
  if (!change) return;
  session.change(change);
  const first = firstNeedles(session.current, index);
  const text = words.moving.keep;
  session.announce(first ? text.freed(first) : text.freedNowhere);
}

function placedBefore(project: ProjectAt, index: number): ByHand['before'] {
  const rule = bandsOf(project)[index]?.rule;
  return rule?.kind === 'by-hand' ? rule.before : undefined;
}

/** The needles on which the groups of a band begin; null where they cannot be placed. */
export function firstNeedles(project: ProjectAt, index: number): readonly Slot[] | null {
  const placed = bandsOf(plannedOf(project).plan)[index];
  const taken = placed?.choices[placed.taken];
  return taken ? taken.groups.map(({ block }) => block.first) : null;
}
