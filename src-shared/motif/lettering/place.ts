/** Where letters come to stand on a drawing. */
import { cellAt, isInside, type Cell, type CellBox, type Grid } from '../../grid/index.ts';

interface Standing {
  /** The cell of the drawing that their lower left one comes to. */
  readonly at: Cell;
  /** Cells of the figure that their ink covers. */
  readonly covered: number;
}

/** Where letters stand, and why there. */
export type LettersPlace =
  | (Standing & { readonly why: 'at-cursor' | 'nearest-free' | 'nothing-free' | 'centred' })
  /** They are larger than the drawing; by so much is left off on each side. */
  | (Standing & {
      readonly why: 'too-large';
      readonly left: number;
      readonly right: number;
      readonly top: number;
      readonly bottom: number;
    });

/** Cells of ground kept between letters and the figure, where there is room for them. */
const APART = 1;

/**
 * Where letters go on a drawing: into its middle if they are to be `centred`;
 * else to the place nearest to the cursor (their lower left cell) where all of
 * their box is ground, with a cell between them and the figure if there is such
 * a place. Where there is none they cover what is drawn at the cursor, moved no
 * further than to lie on the drawing whole.
 */
export function placeLetters(drawing: Grid, ground: number, ink: Grid, cursor: Cell, centred: boolean): LettersPlace {
  const spare = { columns: drawing.width - ink.width, rows: drawing.height - ink.height };
  const middle = { column: Math.floor(spare.columns / 2), row: Math.floor(spare.rows / 2) };
  const whole = {
    column: Math.max(0, Math.min(cursor.column, spare.columns)),
    row: Math.max(0, Math.min(cursor.row, spare.rows)),
  };
  const standing = (at: Cell): Standing => ({
    at,
    covered: coveredBy(drawing, ground, ink, at),
  });
  if (spare.columns < 0 || spare.rows < 0) {
    const at = centred ? middle : whole;
    const left = Math.max(0, -at.column);
    const bottom = Math.max(0, -at.row);
    return {
      ...standing(at),
      why: 'too-large',
      left,
      right: Math.max(0, -spare.columns - left),
      bottom,
      top: Math.max(0, -spare.rows - bottom),
    };
  }
  if (centred) return { ...standing(middle), why: 'centred' };
  const free = nearestFree(drawing, ground, ink, cursor, APART) ?? nearestFree(drawing, ground, ink, cursor, 0);
  if (!free) return { ...standing(whole), why: 'nothing-free' };
  const isThere = free.column === cursor.column && free.row === cursor.row;
  return { ...standing(free), why: isThere ? 'at-cursor' : 'nearest-free' };
}

/**
 * The place nearest to `near`, in stitches and rows together, where a box of
 * that size lies on the drawing whole and holds nothing but ground, nor does
 * anything within `apart` cells of it; of places as near the lowest, and of
 * these the leftmost. Null where there is none. One look at every cell.
 */
export function nearestFree(
  drawing: Grid,
  ground: number,
  { width, height }: Pick<Grid, 'width' | 'height'>,
  near: Cell,
  apart: number,
): Cell | null {
  const figureIn = figureCounter(drawing, ground);
  let best: Cell | null = null;
  let least = Infinity;
  for (let row = 0; row + height <= drawing.height; row++) {
    for (let column = 0; column + width <= drawing.width; column++) {
      const far = Math.abs(column - near.column) + Math.abs(row - near.row);
      const around = { column: column - apart, row: row - apart, width: width + 2 * apart, height: height + 2 * apart };
      if (far >= least || figureIn(around) > 0) continue;
      best = { column, row };
      least = far;
    }
  }
  return best;
}

/** Tells how many figure cells lie in a box, whatever its size, from sums over all boxes that begin at the origin. */
function figureCounter({ width, height, cells }: Grid, ground: number): (box: CellBox) => number {
  const line = width + 1;
  const sums = new Uint32Array(line * (height + 1));
  for (let row = 0; row < height; row++) {
    for (let column = 0, inRow = 0; column < width; column++) {
      if (cells[row * width + column] !== ground) inRow++;
      sums[(row + 1) * line + column + 1] = (sums[row * line + column + 1] as number) + inRow;
    }
  }
  const sum = (column: number, row: number): number =>
    sums[Math.min(Math.max(row, 0), height) * line + Math.min(Math.max(column, 0), width)] as number;
  return (box) => {
    const [right, top] = [box.column + box.width, box.row + box.height];
    return sum(right, top) - sum(box.column, top) - sum(right, box.row) + sum(box.column, box.row);
  };
}

function coveredBy(drawing: Grid, ground: number, ink: Grid, at: Cell): number {
  let covered = 0;
  ink.cells.forEach((inked, index) => {
    const column = at.column + (index % ink.width);
    const row = at.row + Math.floor(index / ink.width);
    if (inked === 1 && isInside(drawing, column, row) && cellAt(drawing, column, row) !== ground) covered++;
  });
  return covered;
}
