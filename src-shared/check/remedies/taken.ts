/** Remedies that stand already. */
import { bandsOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/piece-in.ts';
import { countLongStrands } from '../floats.ts';

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
