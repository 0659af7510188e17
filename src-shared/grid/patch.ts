/**
 * An edit of some cells, as a value that can be applied and inverted.
 *
 * `at[i]` is a cell's index (row × width + column), `to[i]` its new palette
 * index. Each cell stands at most once, in ascending order.
 */
import type { Grid } from './model.ts';

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

/**
 * The patch that sets the cells with these indices to one colour, leaving out
 * those that have it already; none may stand twice. Where a drag changes
 * thousands of cells at once, pairs of each would take longer than the rest.
 */
export function patchOfColour(grid: Grid, indices: readonly number[], to: number): Patch {
  const { cells } = grid;
  const at = Uint32Array.from(
    indices.filter((index) => {
      if (index < 0 || index >= cells.length) throw new RangeError(`Cell ${index} of ${cells.length}`);
      return cells[index] !== to;
    }),
  ).sort();
  return { at, to: new Uint8Array(at.length).fill(to) };
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
  const to = new Uint8Array(patch.at.length);
  for (let i = 0; i < to.length; i++) to[i] = grid.cells[patch.at[i] as number] as number;
  return { at: patch.at, to };
}

/** One patch that does what `first` and then `second` do. */
export function composePatches(first: Patch, second: Patch): Patch {
  const early = first.at.length;
  const late = second.at.length;
  const at = new Uint32Array(early + late);
  const to = new Uint8Array(early + late);
  let count = 0;
  let i = 0;
  // Both ascend. Most of a long drag lies between two cells of what comes to it, and is moved over as it is.
  for (let j = 0; j < late; j++, count++) {
    const index = second.at[j] as number;
    for (; i < early && (first.at[i] as number) < index; i++, count++) {
      at[count] = first.at[i] as number;
      to[count] = first.to[i] as number;
    }
    // Of two colours for one cell the second counts.
    if (i < early && first.at[i] === index) i++;
    at[count] = index;
    to[count] = second.to[j] as number;
  }
  at.set(first.at.subarray(i), count);
  to.set(first.to.subarray(i), count);
  count += early - i;
  return count === at.length ? { at, to } : { at: at.slice(0, count), to: to.slice(0, count) };
}
