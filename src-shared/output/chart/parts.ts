/** How large the cells of a chart are on paper, and over how many pages it goes. */
import type { CellBox } from '../../grid/index.ts';

/** Cells with a shorter side than this cannot be counted by eye while knitting. */
export const LEAST_CELL_MM = 3;
/** The widest cell; a tiny motif need not fill the page. */
export const MOST_CELL_MM = 6;
/** Columns and rows that a part repeats of each part it joins, so that pages can be laid together. */
export const LAP_CELLS = 2;

export interface ChartRoom {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A part of a chart: what it shows, with what it repeats of its neighbours. */
export interface ChartPart extends CellBox {
  /** What it has alone: the cells of all parts together, each once, are the chart. */
  readonly own: CellBox;
  /** Which one it is, from the left and from below, from 0. */
  readonly across: number;
  readonly up: number;
}

export interface ChartParts {
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** How many parts there are each way. */
  readonly across: number;
  readonly up: number;
  /** In the order of knitting: the bottom row of parts first, each row from the left. */
  readonly parts: readonly ChartPart[];
}

/**
 * One part if the whole chart fits with cells that can be counted; otherwise as
 * few pages as its cells allow, cut after a multiple of ten where that costs
 * no page. `aspect` is a cell's width over its height.
 */
export function chartParts(columns: number, rows: number, aspect: number, room: ChartRoom): ChartParts {
  const onePage = cellWidthFor(columns, rows, aspect, room);
  if (Math.min(onePage, onePage / aspect) >= LEAST_CELL_MM) {
    return parts([stretch(0, columns, 0)], [stretch(0, rows, 0)], onePage, aspect);
  }
  // The smallest cell that can be counted, unless the page has no room for even one.
  const least = Math.min(LEAST_CELL_MM * Math.max(1, aspect), room.widthMm, room.heightMm * aspect);
  const across = stretches(columns, Math.max(1, Math.floor(room.widthMm / least + EPSILON)));
  const up = stretches(rows, Math.max(1, Math.floor((room.heightMm * aspect) / least + EPSILON)));
  const most = (found: readonly Stretch[]): number => Math.max(...found.map(({ last, first }) => last - first));
  return parts(across, up, cellWidthFor(most(across), most(up), aspect, room), aspect);
}

const EPSILON = 1e-9;

function cellWidthFor(columns: number, rows: number, aspect: number, room: ChartRoom): number {
  // A gauge may make cells so flat that the least height asks for more.
  const most = Math.max(MOST_CELL_MM, LEAST_CELL_MM * aspect);
  return Math.min(most, room.widthMm / columns, (room.heightMm / rows) * aspect);
}

/** Cells along one side, from `first` up to but not with `last`. */
interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly own: { readonly first: number; readonly last: number };
}

function stretch(first: number, last: number, lap: number, total = last): Stretch {
  return { first: Math.max(0, first - lap), last: Math.min(total, last + lap), own: { first, last } };
}

/** As few stretches as there can be, none showing more than `most` cells, as even as they come. */
function stretches(total: number, most: number): Stretch[] {
  if (total <= most) return [stretch(0, total, 0)];
  const lap = Math.min(LAP_CELLS, Math.floor((most - 1) / 2));
  const [atEnd, between] = [most - lap, most - 2 * lap];
  const count = 2 + Math.max(0, Math.ceil((total - 2 * atEnd) / between));
  const inner = ownLength(total, count, count === 2 ? atEnd : between);
  // Those at the ends have one neighbour only, so they may hold more of their own.
  const first = Math.min(atEnd, Math.max(inner, Math.ceil((total - (count - 2) * inner) / 2)));
  return Array.from({ length: count }, (_, index) => {
    const from = index === 0 ? 0 : first + (index - 1) * inner;
    return stretch(from, index === count - 1 ? total : first + index * inner, lap, total);
  });
}

/** The length of each part but the last, no longer than `most`: even, rounded up to tens where the last stays half as long. */
function ownLength(total: number, count: number, most: number): number {
  const even = Math.ceil(total / count);
  const tens = Math.ceil(even / 10) * 10;
  if (tens <= most && total - (count - 1) * tens >= tens / 2) return tens;
  // Rounded up, the parts before the last may leave nothing to it.
  const fits = total - (count - 1) * even >= 1 ? even : Math.floor(total / count);
  return Math.min(most, fits);
}

function parts(across: readonly Stretch[], up: readonly Stretch[], cellWidth: number, aspect: number): ChartParts {
  const box = (columns: Stretch['own'], rows: Stretch['own']): CellBox => ({
    column: columns.first,
    row: rows.first,
    width: columns.last - columns.first,
    height: rows.last - rows.first,
  });
  return {
    cellWidth,
    cellHeight: cellWidth / aspect,
    across: across.length,
    up: up.length,
    parts: up.flatMap((rows, upIndex) =>
      across.map((columns, acrossIndex) => ({
        ...box(columns, rows),
        own: box(columns.own, rows.own),
        across: acrossIndex,
        up: upIndex,
      })),
    ),
  };
}
