/** What the patterns of a piece do about long floats and carries, row by row. */
import type { PlacedPatterns } from '../fabric/index.ts';
import type { CarryMending, FloatMending } from '../pattern/index.ts';
import { sectionAt } from '../piece/index.ts';
import type { KnitPiece } from '../project/index.ts';

export interface MendingByRow {
  /** What is done about the floats of a row (1-based); null where none are mended. */
  readonly ofFloats: ((row: number) => FloatMending) | null;
  /** Whether yarn that goes from a row to a later one too far aside is cut. */
  readonly isCutAside: (from: number, to: number) => boolean;
}

/**
 * Where patterns share a row, the first that does something has its way. What
 * a lining covers is left as it is: nothing catches in it.
 */
export function mendingByRow(
  piece: Pick<KnitPiece, 'patterns'>,
  { outline, sections, patterns }: Pick<PlacedPatterns, 'outline' | 'sections' | 'patterns'>,
): MendingByRow {
  // Most pieces ask for neither, and are planned with each cell that is painted.
  if (piece.patterns.every(({ longFloats, longCarries }) => longFloats === 'left' && longCarries === 'carried')) {
    return { ofFloats: null, isCutAside: () => false };
  }
  const floats = new Array<FloatMending>(outline.rows).fill('left');
  const carries = new Array<CarryMending>(outline.rows).fill('carried');
  for (const [index, { longFloats, longCarries }] of piece.patterns.entries()) {
    const { firstRow, lastRow } = patterns[index] ?? { firstRow: 1, lastRow: 0 };
    for (let row = firstRow; row <= lastRow; row++) {
      if (floats[row - 1] === 'left') floats[row - 1] = longFloats;
      if (longCarries === 'cut') carries[row - 1] = 'cut';
    }
  }
  const isLined = (row: number): boolean => sectionAt(sections, row).isLined;
  const ofFloats = (row: number): FloatMending =>
    floats[row - 1] === 'left' || isLined(row) ? 'left' : (floats[row - 1] as FloatMending);
  return {
    ofFloats: piece.patterns.some(({ longFloats }) => longFloats !== 'left') ? ofFloats : null,
    isCutAside: (from, to) =>
      (carries[from - 1] === 'cut' || carries[to - 1] === 'cut') && !(isLined(from) && isLined(to)),
  };
}
