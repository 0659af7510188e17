/** What the status line says of a stitch: how it is knitted, and what the running order has done to its needle before. */
import type { Slot } from '@shared/bed/index.ts';
import { actsOnNeedle, stitchAt, type Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { pieceDrawingWords } from '@shared/words/piece-drawing.ts';
import type { Lookahead } from './lookahead-debounced.ts';

/** Null beside the piece. `plan` is that of the project; of acts nothing is said until its own running order is there. */
export function sayStitch(
  { yarns }: Pick<ProjectAt, 'yarns'>,
  plan: Plan,
  ahead: Lookahead | null,
  row: number,
  needle: Slot,
): string | null {
  const facts = stitchAt(plan, row, needle);
  if (!facts) return null;
  const acts = ahead?.plan === plan ? actsOnNeedle(ahead.order, row, needle) : [];
  return pieceDrawingWords.stitch(facts, acts, yarns[facts.yarn]?.name ?? '', yarns.length);
}
