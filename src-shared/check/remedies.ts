/** What can be done about long floats and carries, each with its effect worked out before it is taken. */
import { sectionsOf } from '../piece/index.ts';
import { bandsOf } from '../pattern/index.ts';
import { makePlan, type Plan } from '../plan/index.ts';
import { outcome } from '../problem/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { countLongStrands } from './floats.ts';
import { pieceAfter, type Intent } from './intent.ts';

/** Floats and carries over the limit in the open, now and with the remedy. */
export interface LongStrands {
  readonly before: number;
  readonly after: number;
}

type IntentOf<Code extends Intent['code']> = Extract<Intent, { readonly code: Code }>;

/** An intent, and what would come of it. */
export type Remedy = { readonly long: LongStrands } & (
  | (IntentOf<'own-balls'> & {
      /** Balls of contrast in use then. */
      readonly balls: number;
      readonly wrapsAdded: number;
    })
  | IntentOf<'lining'>
  | (IntentOf<'end-needles-off'> & { readonly wrapsAdded: number })
);

/** A remedy that stands already. */
export type TakenRemedy =
  /** All groups of a band, so many, have balls of their own. */
  | { readonly code: 'own-balls'; readonly band: number; readonly groups: number }
  /** Long floats and carries that the lining covers. */
  | { readonly code: 'lining'; readonly covered: number };

/** What has been done about long floats and carries. `plan` is that of `piece`. */
export function remediesTaken(piece: KnitPiece, plan: Plan): TakenRemedy[] {
  const balls = bandsOf(piece).flatMap(({ groups }, band): TakenRemedy[] => {
    const isTaken = groups.length > 1 && groups.every(({ hasOwnBall }) => hasOwnBall);
    return isTaken ? [{ code: 'own-balls', band, groups: groups.length }] : [];
  });
  if (!piece.isLined) return balls;
  const covered = countLongStrands(plan, true);
  return covered > 0 ? [...balls, { code: 'lining', covered }] : balls;
}

/**
 * The remedies that would leave fewer long floats and carries, the most
 * effective first. Empty where there are none to mend. Each costs about half
 * as much as a plan. `plan` is that of `piece`.
 */
export function remediesFor(piece: KnitPiece, plan: Plan): Remedy[] {
  const steps = remediesInSteps(piece, plan);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, one remedy a step. */
export function* remediesInSteps(piece: KnitPiece, plan: Plan): Generator<null, Remedy[], void> {
  const before = countLongStrands(plan, false);
  if (before === 0) return [];
  const wraps = wrapCount(plan);
  const remedies: Remedy[] = [];
  const consider = <I extends Intent>(intent: I, make: (intent: I, after: Plan, long: LongStrands) => Remedy): void => {
    const then = pieceAfter(piece, intent);
    if (!then) return;
    // No remedy moves a pattern.
    const after = outcome(() => makePlan(then, plan));
    if (!after.ok) return;
    const long = { before, after: countLongStrands(after.value, false) };
    if (long.after < before) remedies.push(make(intent, after.value, long));
  };

  consider({ code: 'end-needles-off' } as const, (intent, after, long) => ({
    ...intent,
    long,
    wrapsAdded: wrapCount(after) - wraps,
  }));
  for (const [band, { groups }] of bandsOf(piece).entries()) {
    yield null;
    if (groups.length < 2) continue;
    consider({ code: 'own-balls', band } as const, (intent, after, long) => ({
      ...intent,
      long,
      balls: contrastBalls(after),
      wrapsAdded: wrapCount(after) - wraps,
    }));
  }
  const lining = { code: 'lining' } as const;
  const lined = pieceAfter(piece, lining);
  if (lined) {
    // The strands are those of the plan: a lining covers them.
    const after = countLongStrands({ ...plan, sections: sectionsOf(lined.shape.rows, lined) }, false);
    if (after < before) remedies.push({ ...lining, long: { before, after } });
  }
  return remedies.sort((a, b) => a.long.after - b.long.after);
}

function wrapCount({ rows }: Plan): number {
  return rows.reduce((count, { wraps }) => count + wraps.length, 0);
}

/** Each contrast strand comes from a ball of its own. */
function contrastBalls({ yarn }: Plan): number {
  return yarn.uses.reduce((count, use) => count + (use.role === 'contrast' ? use.balls.length : 0), 0);
}
