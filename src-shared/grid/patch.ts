/**
 * An edit of some cells, as a value that can be applied and inverted.
 *
 * `at[i]` is a cell's index (row × width + column), `to[i]` its new palette
 * index. Each cell stands at most once, in ascending order.
 */
import type { CellBox } from './draw/cell.ts';
import type { Grid } from './grid.ts';

export interface Patch {
  readonly at: Uint32Array;
  readonly to: Uint8Array;
}

/** The patch that sets the given cells, leaving out those that have the colour already. */
export function patchCells(grid: Grid, cells: Iterable<readonly [index: number, to: number]>): Patch {
  const wanted = new Map<number, number>();
  for (const [index, to] of cells) {
    if (index < 0 || index >= grid.cells.length) throw new RangeError(`Cell ${index} of ${grid.cells.length}`);
    wanted.set(index, to);
  }
  const changing = [...wanted].filter(([index, to]) => grid.cells[index] !== to).sort((a, b) => a[0] - b[0]);
  return {
    at: Uint32Array.from(changing, ([index]) => index),
    to: Uint8Array.from(changing, ([, to]) => to),
  };
}

/** A new grid with the patch applied. Throws `RangeError` if a cell lies outside. */
export function applyPatch(grid: Grid, patch: Patch): Grid {
  const cells = grid.cells.slice();
  for (let i = 0; i < patch.at.length; i++) {
    const index = patch.at[i] as number;
    if (index >= cells.length) throw new RangeError(`Cell ${index} of ${cells.length}`);
    cells[index] = patch.to[i] as number;
  }
  return { ...grid, cells };
}

/** The patch that brings back what `grid`, the state before `patch`, holds. */
export function invertPatch(grid: Grid, patch: Patch): Patch {
  return { at: patch.at, to: Uint8Array.from(patch.at, (index) => grid.cells[index] as number) };
}

/** One patch that does what `first` and then `second` do. */
export function composePatches(first: Patch, second: Patch): Patch {
  const merged = new Map<number, number>();
  for (const patch of [first, second]) {
    for (let i = 0; i < patch.at.length; i++) merged.set(patch.at[i] as number, patch.to[i] as number);
  }
  const cells = [...merged].sort((a, b) => a[0] - b[0]);
  return { at: Uint32Array.from(cells, ([index]) => index), to: Uint8Array.from(cells, ([, to]) => to) };
}

/** The smallest rectangle that holds every changed cell, or null if none: no more than that need be drawn again. */
export function patchBox(patch: Patch, gridWidth: number): CellBox | null {
  if (patch.at.length === 0) return null;
  let left = Infinity;
  let right = -Infinity;
  for (const index of patch.at) {
    const column = index % gridWidth;
    if (column < left) left = column;
    if (column > right) right = column;
  }
  const bottom = Math.floor((patch.at[0] as number) / gridWidth);
  const top = Math.floor((patch.at[patch.at.length - 1] as number) / gridWidth);
  return { column: left, row: bottom, width: right - left + 1, height: top - bottom + 1 };
}
