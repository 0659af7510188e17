/** What of a drawing lies over the edge of another one, and would be left off there. Pure. */
import { isInside, type Grid } from '@shared/grid/index.ts';
import { OPEN, type Cutting } from './cutting.ts';

/** By how many stitches and rows the figure sticks out on each side, as it is drawn. */
export interface Overhang {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** No cell of the figure is inside. */
  readonly isWhole: boolean;
}

/**
 * How the figure of a cutting sticks out of a drawing of that size, or null if
 * it does not. Open cells and those of the ground are nothing that could be lost.
 */
export function overhangOf(size: Pick<Grid, 'width' | 'height'>, ground: number, cutting: Cutting): Overhang | null {
  const { cells, at } = cutting;
  let [left, right, top, bottom] = [0, 0, 0, 0];
  let isWhole = true;
  cells.cells.forEach((colour, index) => {
    if (colour === OPEN || colour === ground) return;
    const column = at.column + (index % cells.width);
    const row = at.row + Math.floor(index / cells.width);
    if (isInside(size, column, row)) isWhole = false;
    left = Math.max(left, -column);
    right = Math.max(right, column - size.width + 1);
    bottom = Math.max(bottom, -row);
    top = Math.max(top, row - size.height + 1);
  });
  return left + right + top + bottom === 0 ? null : { left, right, top, bottom, isWhole };
}

/** The same seen from the other side of the fabric. */
export function overhangTurned(overhang: Overhang): Overhang {
  return { ...overhang, left: overhang.right, right: overhang.left };
}
