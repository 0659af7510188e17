/** Live symmetry and tiling: the cells that are painted along with those under the tool. */
import { isInside, symmetricCells, type Cell, type Grid, type Symmetry } from '@shared/grid/index.ts';
import type { Measure } from '@shared/motif/repeat/index.ts';

export interface Following {
  readonly symmetry: Symmetry;
  /** Size of the copy that all others follow, or null: the motif is one drawing. */
  readonly tile: { readonly width: number; readonly height: number } | null;
}

export const SYMMETRIES: readonly Symmetry[] = ['none', 'left-right', 'up-down', 'both', 'turning'];

/** The symmetry after this one, round and round. */
export function nextSymmetry(symmetry: Symmetry): Symmetry {
  return SYMMETRIES[(SYMMETRIES.indexOf(symmetry) + 1) % SYMMETRIES.length] ?? 'none';
}

/** The copy to start with: the repeat as it is drawn, or all of a motif that has no figure yet. */
export function tileToFollow({ repeat, blank, width, height }: Measure): { width: number; height: number } {
  return blank ? { width: repeat.width, height: repeat.height } : { width, height };
}

/** Nothing follows. */
export const ALONE: Following = { symmetry: 'none', tile: null };

/** What the axes of symmetry divide: one copy, or the whole motif. */
export function copySize(
  grid: Pick<Grid, 'width' | 'height'>,
  { tile }: Following,
): { readonly width: number; readonly height: number } {
  if (!tile) return { width: grid.width, height: grid.height };
  return { width: Math.min(tile.width, grid.width), height: Math.min(tile.height, grid.height) };
}

/** Indices of `cells` and of all cells that follow them, each once; those outside the grid are left out. */
export function followedBy(grid: Grid, cells: readonly Cell[], following: Following): number[] {
  const { width, height } = grid;
  const copy = copySize(grid, following);
  const inCopy = new Set<number>();
  for (const { column, row } of cells) {
    if (!isInside(grid, column, row)) continue;
    const cell = { column: column % copy.width, row: row % copy.height };
    for (const twin of symmetricCells(copy, cell, following.symmetry)) inCopy.add(twin.row * copy.width + twin.column);
  }
  // The same place in every copy. Thousands of cells may follow one, so no object is made of each.
  const found: number[] = [];
  for (const place of inCopy) {
    const left = place % copy.width;
    for (let row = Math.floor(place / copy.width); row < height; row += copy.height) {
      for (let column = left; column < width; column += copy.width) found.push(row * width + column);
    }
  }
  return found;
}
