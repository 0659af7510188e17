/** What findings are made from. */
import type { PlacedPattern } from '../fabric/index.ts';
import type { Plan, PlanRow } from '../plan/index.ts';
import type { KnitPattern, KnitPiece } from '../project/index.ts';

/** A piece and its plan. */
export interface Inspected extends Plan {
  readonly piece: KnitPiece;
  readonly plan: Plan;
  /** Each pattern as it was asked for, and as it lies. */
  readonly laid: readonly { readonly asked: KnitPattern; readonly placed: PlacedPattern }[];
  readonly picked: PickedRows;
}

/** The rows on which there may be something to tell of, from the bottom up. */
export interface PickedRows {
  readonly withEndNeedles: readonly PlanRow[];
  /** Of these the ones without any figure. */
  readonly withBlankEnds: readonly PlanRow[];
  /** With a carry over the limit. */
  readonly withLongCarries: readonly PlanRow[];
  readonly withCuts: readonly PlanRow[];
}

/** `plan` is that of `piece`. */
export function inspected(piece: KnitPiece, plan: Plan): Inspected {
  const laid = plan.patterns.map((placed, index) => ({ asked: piece.patterns[index] as KnitPattern, placed }));
  return { ...plan, piece, plan, laid, picked: pickedRows(plan.rows) };
}

/** In one go: to read thousands of rows takes longer than what is done with them. */
function pickedRows(rows: readonly PlanRow[]): PickedRows {
  const picked: Record<keyof PickedRows, PlanRow[]> = {
    withEndNeedles: [],
    withBlankEnds: [],
    withLongCarries: [],
    withCuts: [],
  };
  for (const row of rows) {
    if (row.endNeedles) {
      picked.withEndNeedles.push(row);
      if (row.endNeedles.isBlank) picked.withBlankEnds.push(row);
    }
    if (row.cuts.length > 0) picked.withCuts.push(row);
    for (const { isOver } of row.carries) {
      if (!isOver) continue;
      picked.withLongCarries.push(row);
      break;
    }
  }
  return picked;
}
