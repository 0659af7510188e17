/** Changes that tools make at cells. Pure; cells outside the motif are left out. */
import {
  cellsOfColour,
  connectedCells,
  isInside,
  patchOfColour,
  strokeCells,
  cellAt,
  type Cell,
} from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { changeOf, paintCells, type ChangeName, type Paint } from '@shared/project/index.ts';
import { ALONE, followedBy, type Following } from './following.ts';

/** A change of some cells of one motif. */
export interface PaintChange {
  readonly name: ChangeName;
  readonly edits: readonly [Paint];
}

/** `colour` at the cells with these indices, each once. Null if they have it already. */
export function paintChange(
  motif: Motif,
  name: ChangeName,
  colour: number,
  indices: readonly number[],
): PaintChange | null {
  const patch = patchOfColour(motif.grid, indices, colour);
  return patch.at.length === 0 ? null : changeOf(name, paintCells(motif.id, patch));
}

/** A `colour` (the pen's, or the ground for the eraser) at `cells` and those that follow. Null if they have it already. */
export function strokeChange(
  motif: Motif,
  tool: 'draw' | 'erase',
  colour: number,
  cells: readonly Cell[],
  following: Following = ALONE,
): PaintChange | null {
  return paintChange(motif, tool, colour, followedBy(motif.grid, cells, following));
}

/**
 * All cells of the colour at `seed` become `colour`: those that hang together
 * with it, or those `everywhere`. Null if nothing changes.
 */
export function fillChange(motif: Motif, colour: number, seed: Cell, everywhere = false): PaintChange | null {
  const { grid } = motif;
  if (!isInside(grid, seed.column, seed.row)) return null;
  const indices = everywhere ? cellsOfColour(grid, cellAt(grid, seed.column, seed.row)) : connectedCells(grid, seed);
  return paintChange(motif, 'fill', colour, indices);
}

/**
 * The cells between `from`, the last cell painted, and each of the `samples` of
 * the pointer in turn, so that a quick hand leaves no holes.
 */
export function cellsThrough(from: Cell, samples: readonly Cell[]): Cell[] {
  const cells: Cell[] = [];
  let last = from;
  for (const sample of samples) {
    if (sample.column === last.column && sample.row === last.row) continue;
    cells.push(...strokeCells(last, sample).slice(1));
    last = sample;
  }
  return cells;
}
