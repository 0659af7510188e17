/** Cells cut out of a drawing, to be moved, copied and laid elsewhere. Pure. */
import {
  applyPatch,
  boxBetween,
  cellAt,
  gridToText,
  isInside,
  patchCells,
  type Cell,
  type Grid,
  CELL_LETTERS,
} from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { changeOf, paintCells, setMotif, type Change, type Laying } from '@shared/project/index.ts';
import type { PaintChange } from './strokes.ts';

/** In a cutting: a cell that does not belong to it. No palette index is so large. */
export const OPEN = 255;

/** Cells with their place on the motif: the lower left one stands at `at`. */
export interface Cutting {
  readonly cells: Grid;
  readonly at: Cell;
}

/**
 * A cutting that is not laid yet: cells lifted from the drawing, which leave
 * their place to the ground, or cells that come from elsewhere.
 */
export type LiftedSelection = Cutting &
  (
    | { readonly name: 'move'; readonly from: Cutting }
    | { readonly name: 'paste' | 'stamp' }
    /** `reads`: from left to right on the chart. */
    | { readonly name: 'lettering'; readonly reads: boolean }
  );

/** The part of the box between two corners that lies on the grid, or null. */
export function cutBox(grid: Grid, from: Cell, to: Cell): Cutting | null {
  const { column, row, width, height } = boxBetween(from, to);
  const left = Math.max(0, column);
  const bottom = Math.max(0, row);
  const right = Math.min(grid.width, column + width);
  const top = Math.min(grid.height, row + height);
  if (right <= left || top <= bottom) return null;
  const within = { column: left, row: bottom };
  return cutWhere(grid, within, { column: right - 1, row: top - 1 }, () => true);
}

/** All cells of one colour, or null if there are none. */
export function cutColour(grid: Grid, colour: number): Cutting | null {
  let left = grid.width;
  let right = -1;
  let bottom = grid.height;
  let top = -1;
  grid.cells.forEach((cell, index) => {
    if (cell !== colour) return;
    const column = index % grid.width;
    const row = Math.floor(index / grid.width);
    left = Math.min(left, column);
    right = Math.max(right, column);
    bottom = Math.min(bottom, row);
    top = Math.max(top, row);
  });
  if (right < 0) return null;
  return cutWhere(grid, { column: left, row: bottom }, { column: right, row: top }, (cell) => cell === colour);
}

function cutWhere(grid: Grid, from: Cell, to: Cell, belongs: (colour: number) => boolean): Cutting {
  const { column, row, width, height } = boxBetween(from, to);
  const cells = new Uint8Array(width * height);
  for (let index = 0; index < cells.length; index++) {
    const colour = cellAt(grid, column + (index % width), row + Math.floor(index / width));
    cells[index] = belongs(colour) ? colour : OPEN;
  }
  return { cells: { width, height, cells }, at: { column, row } };
}

/** The cutting as the drawing has it now; those of its cells that lie outside are open. */
export function cutAgain(grid: Grid, { cells, at }: Cutting): Cutting {
  const now = cells.cells.map((colour, index) => {
    const { column, row } = placeOf(cells, at, index);
    return colour === OPEN || !isInside(grid, column, row) ? OPEN : cellAt(grid, column, row);
  });
  return { cells: { ...cells, cells: now }, at };
}

/** True if the cell belongs to the cutting where it lies. */
export function holds({ cells, at }: Cutting, { column, row }: Cell): boolean {
  const inside = { column: column - at.column, row: row - at.row };
  return isInside(cells, inside.column, inside.row) && cellAt(cells, inside.column, inside.row) !== OPEN;
}

/** The cells of a cutting given to the ground, cut out or erased. Null if they are it already. */
export function cutChange(
  motif: Motif,
  ground: number,
  cutting: Cutting,
  name: 'cut' | 'erase' = 'cut',
): PaintChange | null {
  return patched(motif, name, groundUnder(motif, ground, cutting));
}

/** The cutting laid down, the place that it was lifted from given to the ground. Null if nothing changes. */
export function layChange(motif: Motif, ground: number, lifted: LiftedSelection): PaintChange | null {
  const laid = indicesOf(motif.grid, lifted);
  const under = lifted.name === 'move' ? groundUnder(motif, ground, lifted.from) : [];
  return patched(motif, lifted.name, [...under, ...laid]);
}

/** The change that lays letters which read on the chart: from then on the motif must not be seen mirrored. */
export function asLettering(motif: Motif, { name, edits }: PaintChange): Change {
  return changeOf(name, ...edits, setMotif(motif.id, { isLettering: true }));
}

/** True if laying it makes the motif one of letters. */
export function makesLettering(motif: Motif, lifted: LiftedSelection): boolean {
  return lifted.name === 'lettering' && lifted.reads && !motif.isLettering;
}

/** What laying it would give, as plain data. Null if it changes nothing, and for a stamp, which is laid by the stamp alone. */
export function layingOf(motif: Motif, ground: number, lifted: LiftedSelection): Laying | null {
  if (lifted.name === 'stamp') return null;
  const change = layChange(motif, ground, lifted);
  if (!change) return null;
  const rows = gridToText(applyPatch(motif.grid, change.edits[0].patch), CELL_LETTERS);
  return { name: lifted.name, motif: motif.id, rows, isLettering: makesLettering(motif, lifted) };
}

function groundUnder(motif: Motif, ground: number, cutting: Cutting): [number, number][] {
  return indicesOf(motif.grid, cutting).map(([index]) => [index, ground]);
}

/** The cells that belong and lie on the grid: index there, and colour. */
function indicesOf(grid: Grid, { cells, at }: Cutting): [number, number][] {
  const found: [number, number][] = [];
  cells.cells.forEach((colour, index) => {
    const { column, row } = placeOf(cells, at, index);
    if (colour !== OPEN && isInside(grid, column, row)) found.push([row * grid.width + column, colour]);
  });
  return found;
}

function placeOf({ width }: Grid, at: Cell, index: number): Cell {
  return { column: at.column + (index % width), row: at.row + Math.floor(index / width) };
}

function patched(motif: Motif, name: PaintChange['name'], cells: [number, number][]): PaintChange | null {
  const patch = patchCells(motif.grid, cells);
  return patch.at.length === 0 ? null : changeOf(name, paintCells(motif.id, patch));
}
