/** Shaping that both edges cannot share. */
import { edgeStepsOf, oddDifferences } from '../piece/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** The rows on which an odd difference of widths is made up at one edge, with the widths that would need none. */
export function oddShaping({ piece: { shape }, outline }: Inspected): Finding[] {
  const differences = oddDifferences(shape);
  if (differences.length === 0) return [];
  const alone = edgeStepsOf(outline).filter(({ left, right }) => left !== right);
  return differences.flatMap(({ at, even }): Finding[] => {
    const isIn = (row: number): boolean =>
      shape.kind !== 'body' || (at === 'waist' ? row <= shape.rowsToWaist : row > shape.rowsToWaist);
    const step = alone.find(({ row }) => isIn(row));
    if (!step) return [];
    const edge = step.left === 0 ? 'right' : 'left';
    return [{ code: 'odd-shaping', rows: [step.row, step.row], at, edge, even: even.map(({ stitches }) => stitches) }];
  });
}
