/** An all-over that comes: where there is room, or in place of what stands in its rows. */
import type { Plan } from '@shared/plan/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { AllOver, PatternName } from '@shared/pattern/index.ts';
import type { Start } from '@shared/piece/index.ts';
import { startAllOver } from '@shared/project/index.ts';
import { ROWS_ABOVE_HEM } from '../panel/positions.ts';

/** Before the second row there is none to set it up on. */
const FIRST_ROW = 2;

/** What is asked of a plan. */
type Stage = Pick<Plan, 'patterns' | 'outline' | 'sections'>;

/** Rows that an all-over may take, and where it starts. */
interface Room {
  readonly from: Start;
  readonly firstRow: number;
  readonly lastRow: number;
}

/**
 * A new all-over where there is room: above all patterns to the top, else below
 * them. It starts on the second row, or where a hem is, on the second row above
 * that, however high it is in a size. Where there is no room it begins there all
 * the same, and the plan says what is in its way.
 */
export function newAllOver(motif: MotifId, plan: Stage): AllOver {
  const { from, lastRow } = freeRows(plan) ?? { from: lowestStart(plan).start, lastRow: plan.outline.rows };
  const allOver = startAllOver(motif, from);
  if (lastRow === plan.outline.rows) return allOver;
  return { ...allOver, position: { kind: 'from-to', from, to: { kind: 'to-row', row: lastRow } } };
}

/** The rows above all patterns, else those below them; null where neither are free. */
export function freeRows(plan: Stage): Room | null {
  const { patterns, outline } = plan;
  const { start, row: lowest } = lowestStart(plan);
  const above = Math.max(0, ...patterns.map(({ lastRow }) => lastRow)) + 1;
  if (above <= lowest) return { from: start, firstRow: lowest, lastRow: outline.rows };
  if (above <= outline.rows) return { from: { kind: 'from-row', row: above }, firstRow: above, lastRow: outline.rows };
  const below = Math.min(...patterns.map(({ firstRow }) => firstRow)) - 1;
  return below < lowest ? null : { from: start, firstRow: lowest, lastRow: below };
}

/** An all-over over the whole piece, and what stands in its rows, which it would come in place of. */
export interface WholeAllOver {
  readonly allOver: AllOver;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly standing: readonly PatternName[];
}

/** The all-over from the lowest row on which one starts (see {@link newAllOver}) to the top, and what is placed there. */
export function wholeAllOver(motif: MotifId, plan: Stage): WholeAllOver {
  const { start, row } = lowestStart(plan);
  const standing = plan.patterns
    .filter(({ lastRow }) => lastRow >= row)
    .map(({ kind, number }): PatternName => ({ kind, number }));
  return { allOver: startAllOver(motif, start), firstRow: row, lastRow: plan.outline.rows, standing };
}

/** Where an all-over starts at the lowest, and the row that this is. */
function lowestStart({ outline, sections }: Pick<Plan, 'outline' | 'sections'>): { start: Start; row: number } {
  const hem = sections.find(({ name }) => name === 'hem-front');
  const aboveHem = hem ? hem.last + 1 + ROWS_ABOVE_HEM : 0;
  if (hem && aboveHem <= outline.rows) {
    return { start: { kind: 'above-hem', rows: ROWS_ABOVE_HEM }, row: aboveHem };
  }
  const row = Math.min(FIRST_ROW, outline.rows);
  return { start: { kind: 'from-row', row }, row };
}
