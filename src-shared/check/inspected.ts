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
  /** The rows (1-based, ascending) that are not those of what was inspected before; null where there was nothing, or more or fewer rows. */
  readonly changed: readonly number[] | null;
}

/** The rows on which there may be something to tell of, from the bottom up. */
export interface PickedRows {
  /** End needles, but no figure. */
  readonly withBlankEnds: readonly PlanRow[];
  /** With a carry over the limit. */
  readonly withLongCarries: readonly PlanRow[];
  readonly withCuts: readonly PlanRow[];
  /** By row (index 0 is row 1): at which edges its end needles are, {@link AT_LEFT} and {@link AT_RIGHT} added. */
  readonly endNeedlesAt: Uint8Array;
}

export const AT_LEFT = 1;
export const AT_RIGHT = 2;

/** `plan` is that of `piece`; `before`: what any other one was inspected as. */
export function inspected(piece: KnitPiece, plan: Plan, before: Inspected | null = null): Inspected {
  const laid = plan.patterns.map((placed, index) => ({ asked: piece.patterns[index] as KnitPattern, placed }));
  const changed = before && changedRows(plan.rows, before.rows);
  const picked = before && changed ? pickedAgain(plan.rows, before.picked, changed) : pickedRows(plan.rows);
  return { ...plan, piece, plan, laid, picked, changed };
}

/** The rows (1-based) that are not the same values; null where there are more or fewer. */
function changedRows(rows: readonly PlanRow[], before: readonly PlanRow[]): number[] | null {
  if (rows.length !== before.length) return null;
  const changed: number[] = [];
  for (let index = 0; index < rows.length; index++) if (rows[index] !== before[index]) changed.push(index + 1);
  return changed;
}

/** In one go: to read thousands of rows takes longer than what is done with them. */
function pickedRows(rows: readonly PlanRow[]): PickedRows {
  const withBlankEnds: PlanRow[] = [];
  const withLongCarries: PlanRow[] = [];
  const withCuts: PlanRow[] = [];
  const endNeedlesAt = new Uint8Array(rows.length);
  for (let index = 0; index < rows.length; index++) {
    const row = rows[index] as PlanRow;
    endNeedlesAt[index] = edgesWithEnds(row);
    if (hasBlankEnds(row)) withBlankEnds.push(row);
    if (hasLongCarry(row)) withLongCarries.push(row);
    if (hasCuts(row)) withCuts.push(row);
  }
  return { withBlankEnds, withLongCarries, withCuts, endNeedlesAt };
}

/** What `pickedRows` gives, from what was picked before the rows of `changed` (1-based, ascending) were. */
function pickedAgain(rows: readonly PlanRow[], before: PickedRows, changed: readonly number[]): PickedRows {
  const endNeedlesAt = before.endNeedlesAt.slice();
  for (const row of changed) endNeedlesAt[row - 1] = edgesWithEnds(rows[row - 1] as PlanRow);
  const again = (was: readonly PlanRow[], isPicked: (row: PlanRow) => boolean): readonly PlanRow[] => {
    const picked: PlanRow[] = [];
    for (const row of changed) if (isPicked(rows[row - 1] as PlanRow)) picked.push(rows[row - 1] as PlanRow);
    const kept = was.filter((row) => rows[row.row - 1] === row);
    return picked.length === 0 ? kept : [...kept, ...picked].sort((one, other) => one.row - other.row);
  };
  return {
    withBlankEnds: again(before.withBlankEnds, hasBlankEnds),
    withLongCarries: again(before.withLongCarries, hasLongCarry),
    withCuts: again(before.withCuts, hasCuts),
    endNeedlesAt,
  };
}

function edgesWithEnds({ edges, endNeedles }: PlanRow): number {
  if (!endNeedles) return 0;
  const { needles } = endNeedles;
  return (needles.includes(edges.first) ? AT_LEFT : 0) + (needles.includes(edges.last) ? AT_RIGHT : 0);
}

function hasBlankEnds({ endNeedles }: PlanRow): boolean {
  return endNeedles?.isBlank === true;
}

function hasLongCarry({ carries }: PlanRow): boolean {
  return carries.length > 0 && carries.some(({ isOver }) => isOver);
}

function hasCuts({ cuts }: PlanRow): boolean {
  return cuts.length > 0;
}
