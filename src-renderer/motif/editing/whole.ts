/** Changes of a whole motif: mirrored, turned, moved, mended, trimmed, its colours exchanged. Null: nothing changes. */
import {
  deleteColumns,
  deleteRows,
  exchangeColours,
  insertColumns,
  insertRows,
  mirrorAcross,
  mirrorUp,
  outlineCells,
  quarterTurn,
  sameGrid,
  shiftAround,
  MOST_COLUMNS,
  MOST_ROWS,
  type Cell,
  type CellBox,
  type Grid,
} from '@shared/grid/index.ts';
import { cropToRepeat, trimBlank, type Measure } from '@shared/motif/repeat/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { changeOf, redraw, type Change, type ChangeName } from '@shared/project/index.ts';
import { measureOf } from '../measured.ts';
import { paintChange } from './strokes.ts';

/** What a command works on beside the motif. */
export interface Place {
  /** The keyboard's cell cursor. */
  readonly cursor: Cell;
  /** The selected box, or null: columns and rows are then those of the cursor. */
  readonly selected: CellBox | null;
  /** Palette index of the yarn in the pen. */
  readonly colour: number;
  /** Palette index of the main yarn. */
  readonly ground: number;
}

/** A command for the whole motif; its change is null where it cannot be done, or would change nothing. */
export type WholeCommand = (motif: Motif, place: Place) => Change | null;

export type WholeName =
  | 'mirror-across'
  | 'mirror-up'
  | 'quarter-turn'
  | 'shift-left'
  | 'shift-right'
  | 'shift-up'
  | 'shift-down'
  | 'insert-column'
  | 'delete-column'
  | 'insert-row'
  | 'delete-row'
  | 'exchange-yarns'
  | 'invert'
  | 'outline'
  | 'mend-slips'
  | 'crop-blank-first'
  | 'crop-blank-last'
  | 'crop-at-cursor'
  | 'trim-blank';

export const WHOLE: { readonly [Name in WholeName]: WholeCommand } = {
  'mirror-across': (motif) => gridChange(motif, 'mirror-across', mirrorAcross(motif.grid)),
  'mirror-up': (motif) => gridChange(motif, 'mirror-up', mirrorUp(motif.grid)),
  'quarter-turn': (motif) =>
    motif.grid.height > MOST_COLUMNS ? null : gridChange(motif, 'quarter-turn', quarterTurn(motif.grid)),
  'shift-left': (motif) => gridChange(motif, 'shift', shiftAround(motif.grid, -1, 0)),
  'shift-right': (motif) => gridChange(motif, 'shift', shiftAround(motif.grid, 1, 0)),
  'shift-up': (motif) => gridChange(motif, 'shift', shiftAround(motif.grid, 0, 1)),
  'shift-down': (motif) => gridChange(motif, 'shift', shiftAround(motif.grid, 0, -1)),
  'insert-column': (motif, place) => {
    const { column, width } = boxAt(place);
    if (motif.grid.width + width > MOST_COLUMNS) return null;
    return gridChange(motif, 'insert-column', insertColumns(motif.grid, column, width, place.ground));
  },
  'delete-column': (motif, place) => {
    const { column, width } = boxAt(place);
    return motif.grid.width <= width
      ? null
      : gridChange(motif, 'delete-column', deleteColumns(motif.grid, column, width));
  },
  'insert-row': (motif, place) => {
    const { row, height } = boxAt(place);
    if (motif.grid.height + height > MOST_ROWS) return null;
    return gridChange(motif, 'insert-row', insertRows(motif.grid, row, height, place.ground));
  },
  'delete-row': (motif, place) => {
    const { row, height } = boxAt(place);
    return motif.grid.height <= height ? null : gridChange(motif, 'delete-row', deleteRows(motif.grid, row, height));
  },
  'exchange-yarns': (motif, { cursor, colour }) => {
    const { grid } = motif;
    const other = grid.cells[cursor.row * grid.width + cursor.column];
    return other === undefined ? null : gridChange(motif, 'exchange-yarns', exchangeColours(grid, colour, other));
  },
  invert: (motif, { colour, ground }) => {
    const { grid } = motif;
    const figure = colour === ground ? grid.cells.find((cell) => cell !== ground) : colour;
    if (figure === undefined) return null;
    const cells = grid.cells.map((cell) => (cell === ground ? figure : ground));
    return gridChange(motif, 'invert', { ...grid, cells });
  },
  outline: (motif, { colour, ground }) => paintChange(motif, 'outline', colour, outlineCells(motif.grid, ground)),
  'mend-slips': mendSlips,
  'crop-blank-first': (motif, { ground }) => {
    const measured = measureOf({ grid: motif.grid, ground });
    return cropChange(motif, 'crop', measured, { column: measured.starts.blankFirst, row: 0 });
  },
  'crop-blank-last': (motif, { ground }) => {
    const measured = measureOf({ grid: motif.grid, ground });
    return cropChange(motif, 'crop', measured, { column: measured.starts.blankLast, row: 0 });
  },
  'crop-at-cursor': (motif, { cursor, ground }) =>
    cropChange(motif, 'crop-at-cursor', measureOf({ grid: motif.grid, ground }), cursor),
  'trim-blank': (motif, { ground }) => gridChange(motif, 'trim', trimBlank(motif.grid, ground)),
};

export const WHOLE_NAMES = Object.keys(WHOLE) as readonly WholeName[];

/** The columns and rows that are put in or taken away. */
function boxAt({ cursor, selected }: Place): CellBox {
  return selected ?? { ...cursor, width: 1, height: 1 };
}

/** Commands that ask what the drawing measures: of a large one that takes a while. */
export const ASKS_MEASURE: ReadonlySet<WholeName> = new Set<WholeName>([
  'mend-slips',
  'crop-blank-first',
  'crop-blank-last',
  'crop-at-cursor',
]);

function gridChange(motif: Motif, name: ChangeName, grid: Grid): Change | null {
  return sameGrid(grid, motif.grid) ? null : changeOf(name, redraw(motif, grid));
}

/** Every cell that breaks the near repeat becomes what most of its copies are; where as many are something else, nothing is changed. */
function mendSlips(motif: Motif, { ground }: Place): Change | null {
  const { grid } = motif;
  const cells = grid.cells.slice();
  for (const { column, row, expected } of measureOf({ grid, ground }).slips)
    if (expected !== null) cells[row * grid.width + column] = expected;
  return gridChange(motif, 'mend-slips', { ...grid, cells });
}

/** One true repeat from `start` on, going round within it. */
function cropChange(motif: Motif, name: 'crop' | 'crop-at-cursor', { repeat }: Measure, start: Cell): Change | null {
  return gridChange(motif, name, cropToRepeat(motif.grid, repeat, start));
}
