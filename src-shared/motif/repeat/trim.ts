/**
 * Cropping a drawing to what matters: its true repeat, or its figure.
 *
 * A repeat may start at any of its columns and rows; the plane it fills is the
 * same. What differs is where the blank columns stand, and with them what is
 * counted when copies are placed.
 */
import { crop, type Grid } from '../../grid/index.ts';
import { blankEdges } from './bounds.ts';

/** One repeat, `width` × `height`, starting at a column and row of the drawing; it wraps round within the repeat. */
export function cropToRepeat(
  grid: Grid,
  repeat: { readonly width: number; readonly height: number },
  start: { readonly column: number; readonly row: number } = { column: 0, row: 0 },
): Grid {
  const { width, height } = repeat;
  const cells = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const from = ((row + start.row) % height) * grid.width;
    for (let column = 0; column < width; column++) {
      cells[row * width + column] = grid.cells[from + ((column + start.column) % width)] as number;
    }
  }
  return { width, height, cells };
}

/** Where a repeat must start so that its widest blank stands before the figure, or after it. */
export interface Starts {
  readonly blankFirst: number;
  readonly blankLast: number;
  /** Blank columns in a row, counted round the repeat; 0: the figures touch. */
  readonly blank: number;
}

/** The starts across for one repeat of the drawing; both 0 where there is no blank column or no figure. */
export function startsAcross(
  grid: Grid,
  repeat: { readonly width: number; readonly height: number },
  ground: number,
): Starts {
  const { width, height } = repeat;
  const isBlank = Array.from({ length: width }, (_, column) => {
    for (let row = 0; row < height; row++) if (grid.cells[row * grid.width + column] !== ground) return false;
    return true;
  });
  if (!isBlank.includes(true) || !isBlank.includes(false)) return { blankFirst: 0, blankLast: 0, blank: 0 };
  let best = { start: 0, length: 0 };
  for (let start = 0; start < width; start++) {
    if (!isBlank[start] || isBlank[(start + width - 1) % width]) continue;
    let length = 1;
    while (isBlank[(start + length) % width]) length++;
    if (length > best.length) best = { start, length };
  }
  return { blankFirst: best.start, blankLast: (best.start + best.length) % width, blank: best.length };
}

/** The drawing without its blank edges; the drawing itself where there is no figure. */
export function trimBlank(grid: Grid, ground: number): Grid {
  const blank = blankEdges(grid, ground);
  if (blank === null) return grid;
  const { left, right, top, bottom } = blank;
  return crop(grid, left, bottom, grid.width - left - right, grid.height - top - bottom);
}
