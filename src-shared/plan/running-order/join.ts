/** Where a folded hem is joined. */
import { stitchesAt } from '../../piece/index.ts';
import type { Plan } from '../types.ts';

export interface Join {
  /** Reading at which its loops are hung: its last row. */
  readonly at: number;
  /** Loops to hang, the half loop that is completed among them. */
  readonly loops: number;
}

/** The join of a hem with an open start; null where nothing folds. */
export function joinOf({ sections, outline }: Plan): Join | null {
  const front = sections.find(({ name }) => name === 'hem-front');
  if (!front || !sections.some(({ name }) => name === 'hem-back')) return null;
  return { at: front.last, loops: stitchesAt(outline, 1) };
}
