/** The folded hem, whose cast-on loops are hung one to a needle. */
import { stitchesAt } from '../piece/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** `hem-loops`: shaping inside the hem, row by row, leaves loops without a needle or needles without a loop. */
export function hemLoops({ outline, sections }: Inspected): Finding[] {
  const isFolded = sections.some(({ name }) => name === 'hem-back');
  const front = sections.find(({ name }) => name === 'hem-front');
  if (!isFolded || !front) return [];
  const [loops, hungOn] = [stitchesAt(outline, 1), stitchesAt(outline, front.last)];
  return loops === hungOn ? [] : [{ code: 'hem-loops', rows: [front.last, front.last], loops, hungOn }];
}
