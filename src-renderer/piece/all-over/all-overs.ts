/** An all-over that comes, and the chosen one. */
import type { Plan } from '@shared/plan/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { AllOver } from '@shared/pattern/index.ts';
import { startAllOver } from '@shared/project/index.ts';

/** Before the second row there is none to set it up on. */
const FIRST_ROW = 2;

/**
 * A new all-over where there is room: above all patterns to the top, else below
 * them. Where there is none it begins low, and the plan says what is in its way.
 */
export function newAllOver(motif: MotifId, { patterns, outline }: Pick<Plan, 'patterns' | 'outline'>): AllOver {
  if (patterns.length === 0) return startAllOver(motif, Math.min(FIRST_ROW, outline.rows));
  const above = Math.max(...patterns.map(({ lastRow }) => lastRow)) + 1;
  if (above <= outline.rows) return startAllOver(motif, above);
  const below = Math.min(...patterns.map(({ firstRow }) => firstRow)) - 1;
  const allOver = startAllOver(motif, FIRST_ROW);
  return below >= FIRST_ROW ? { ...allOver, lastRow: below } : allOver;
}
