/** An all-over that comes, and the chosen one. */
import type { Plan } from '@shared/plan/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { AllOver } from '@shared/pattern/index.ts';
import type { Start } from '@shared/piece/index.ts';
import { startAllOver } from '@shared/project/index.ts';
import { ROWS_ABOVE_HEM } from '../panel/positions.ts';

/** Before the second row there is none to set it up on. */
const FIRST_ROW = 2;

/**
 * A new all-over where there is room: above all patterns to the top, else below
 * them. It starts on the second row, or where a hem is, on the second row above
 * that, however high it is in a size. Where there is no room it begins there all
 * the same, and the plan says what is in its way.
 */
export function newAllOver(motif: MotifId, plan: Pick<Plan, 'patterns' | 'outline' | 'sections'>): AllOver {
  const { patterns, outline } = plan;
  const { start, row: lowest } = lowestStart(plan);
  if (patterns.length === 0) return startAllOver(motif, start);
  const above = Math.max(...patterns.map(({ lastRow }) => lastRow)) + 1;
  if (above <= lowest) return startAllOver(motif, start);
  if (above <= outline.rows) return startAllOver(motif, above);
  const below = Math.min(...patterns.map(({ firstRow }) => firstRow)) - 1;
  const allOver = startAllOver(motif, start);
  if (below < lowest) return allOver;
  return { ...allOver, position: { kind: 'from-to', from: start, to: { kind: 'to-row', row: below } } };
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
