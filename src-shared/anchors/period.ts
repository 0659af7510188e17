/**
 * Rows of an all-over that are the same again a copy further up: what was
 * worked out for the rows below holds for them too, and most of a large piece
 * is such rows.
 */
import type { Fabric, PlacedPatterns } from '../fabric/index.ts';
import type { Outline } from '../piece/index.ts';

/** As far as the surroundings of a cell reach that an anchor minds. */
const AROUND = 2;

export interface Period {
  /** Rows after which the pattern begins again. */
  readonly rows: number;
  /** Whether a row (1-based), and those around it, are as the row so many below it. */
  isRepeated(row: number): boolean;
}

/** Where one all-over alone has needles on its rows; null for bands, several patterns, and copies that are stepped. */
export function periodOf(
  fabric: Fabric,
  drawn: Fabric,
  { patterns, outline }: Pick<PlacedPatterns, 'patterns' | 'outline'>,
): Period | null {
  const [only, ...others] = patterns;
  if (only?.kind !== 'all-over' || others.length > 0 || only.step !== 0) return null;
  const { firstRow, lastRow, copy, without, colours } = only;
  const rows = copy.height;
  if (rows < 2 || without.size > 0 || colours !== null) return null;
  // So many rows on end, up to this one, are as those below them.
  const onEnd = new Int32Array(fabric.rows + 2);
  for (let row = firstRow + rows; row <= lastRow; row++) {
    const isSame = isSameAtEdges(fabric, outline, row, rows) && isSameAtEdges(drawn, outline, row, rows);
    onEnd[row] = isSame ? (onEnd[row - 1] as number) + 1 : 0;
  }
  return {
    rows,
    isRepeated: (row) => row + AROUND <= lastRow && (onEnd[row + AROUND] as number) > 2 * AROUND,
  };
}

/**
 * Whether a row begins and ends where the row so many below it does, and alike.
 * Between its ends there is nothing but the copies, which are the same again.
 */
function isSameAtEdges({ cells, width, first }: Fabric, outline: Outline, row: number, below: number): boolean {
  const [left, right] = [outline.first[row - 1] as number, outline.last[row - 1] as number];
  if (left !== outline.first[row - 1 - below] || right !== outline.last[row - 1 - below]) return false;
  const start = (row - 1) * width - first;
  const off = below * width;
  return cells[start + left] === cells[start + left - off] && cells[start + right] === cells[start + right - off];
}
