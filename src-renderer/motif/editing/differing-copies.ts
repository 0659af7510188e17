/** Copies of a near repeat that differ: which place is looked at, how it is shown, and what settles it. */
import type { Cell, CellBox, Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { settleCopies, versionsAt, type Measure, type NearRepeat, type Version } from '@shared/motif/repeat/index.ts';
import { changeOf, redraw, type Change } from '@shared/project/index.ts';

/** A place of the repeat that is asked about. */
export interface AskedPlace {
  readonly near: NearRepeat;
  /** The cell that broke the repeat, one of the copies. */
  readonly cell: Cell;
  /** At least two, in the order of {@link versionsAt}. */
  readonly versions: readonly Version[];
}

/**
 * The place that `cursor` stands in, or else the first whose copies differ; null
 * if none does. Places that were settled since the drawing was measured are
 * passed over.
 */
export function askedPlace(grid: Grid, { width, height, near }: Measure, cursor: Cell): AskedPlace | null {
  if (!near || width !== grid.width || height !== grid.height) return null;
  const isHere = ({ column, row }: Cell): boolean =>
    (column - cursor.column) % near.width === 0 && (row - cursor.row) % near.height === 0;
  const here = near.slips.find(isHere);
  for (const { column, row } of here ? [here, ...near.slips] : near.slips) {
    const cell = { column, row };
    const versions = versionsAt(grid, near, cell);
    if (versions.length > 1) return { near, cell, versions };
  }
  return null;
}

/** Columns or rows of a copy that are shown around a cell. */
const MOST_SHOWN = 24;

/** The cells of one copy to be shown for a cell of it: the copy, or of a large one what is around the cell. It may go over the chart's edge. */
export function shownOfCopy(repeat: { readonly width: number; readonly height: number }, cell: Cell): CellBox {
  const across = shownAround(cell.column % repeat.width, repeat.width);
  const up = shownAround(cell.row % repeat.height, repeat.height);
  return {
    column: cell.column - (cell.column % repeat.width) + across.from,
    row: cell.row - (cell.row % repeat.height) + up.from,
    width: across.many,
    height: up.many,
  };
}

function shownAround(place: number, length: number): { readonly from: number; readonly many: number } {
  const many = Math.min(length, MOST_SHOWN);
  return { from: Math.min(Math.max(place - Math.floor(many / 2), 0), length - many), many };
}

/** Makes all copies of a cell alike; null where they are. */
export function settleChange(motif: Motif, near: NearRepeat, cell: Cell, colour: number): Change | null {
  if (versionsAt(motif.grid, near, cell).every((version) => version.colour === colour)) return null;
  return changeOf('settle-copies', redraw(motif, settleCopies(motif.grid, near, cell, colour)));
}
