/** Changes that a tool makes at cells. Pure; cells outside the motif are left out. */
import { connectedCells, isInside, patchCells, strokeCells, type Cell } from '@shared/grid/index.ts';
import type { Change, Motif } from '@shared/project/index.ts';

/** The pen's `colour`, or the ground for the eraser, at `cells`. Null if they have it already. */
export function strokeChange(
  motif: Motif,
  tool: 'draw' | 'erase',
  colour: number,
  cells: readonly Cell[],
): Change | null {
  const { grid } = motif;
  const to = tool === 'draw' ? colour : motif.ground;
  const inside = cells.filter(({ column, row }) => isInside(grid, column, row));
  const patch = patchCells(
    grid,
    inside.map(({ column, row }) => [row * grid.width + column, to] as const),
  );
  return patch.at.length === 0 ? null : { name: tool, kind: 'paint', motif: motif.id, patch };
}

/** All cells of the colour at `seed` that hang together with it become `colour`. Null if nothing changes. */
export function fillChange(motif: Motif, colour: number, seed: Cell): Change | null {
  const patch = patchCells(
    motif.grid,
    connectedCells(motif.grid, seed).map((index) => [index, colour] as const),
  );
  return patch.at.length === 0 ? null : { name: 'fill', kind: 'paint', motif: motif.id, patch };
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
