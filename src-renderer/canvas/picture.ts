/** What a cell stage shows: a grid, the colours of its yarns, and its copies faint around it. */
import { placeInCopy, placesInCopies, type Cell, type CellBox, type Copies, type Grid } from '@shared/grid/index.ts';

/** Neighbouring copies around a grid: its lower left cells, repeated as `copies` lie. */
export interface Surround {
  readonly copies: Copies;
  /** The grid is seen from its other side: left and right have changed places, and so they have in the copies. */
  readonly isMirrored: boolean;
  /** How many columns of them show on each side, and how many rows above and below. */
  readonly columns: number;
  readonly rows: number;
  /** How strongly they show, 0 … 1. */
  readonly strength: number;
}

export interface CellPicture {
  readonly grid: Grid;
  /** `#rrggbb` of each palette index; null leaves the cell open. */
  readonly colours: readonly (string | null)[];
  readonly surround: Surround | null;
}

/** All cells of the picture, the surround included. */
export function pictureArea({ grid, surround }: CellPicture): CellBox {
  const columns = surround?.columns ?? 0;
  const rows = surround?.rows ?? 0;
  return { column: -columns, row: -rows, width: grid.width + 2 * columns, height: grid.height + 2 * rows };
}

/** True if two pictures differ in nothing but the colours of their grid's cells. */
export function isPatchOf(picture: CellPicture, before: CellPicture): boolean {
  const a = picture.surround;
  const b = before.surround;
  return (
    picture.grid.width === before.grid.width &&
    picture.grid.height === before.grid.height &&
    picture.colours.length === before.colours.length &&
    picture.colours.every((colour, index) => colour === before.colours[index]) &&
    (a === b ||
      (a !== null &&
        b !== null &&
        areSameCopies(a.copies, b.copies) &&
        a.isMirrored === b.isMirrored &&
        a.columns === b.columns &&
        a.rows === b.rows &&
        a.strength === b.strength))
  );
}

function areSameCopies(a: Copies, b: Copies): boolean {
  return a === b || (a.laid === b.laid && a.width === b.width && a.height === b.height && a.step === b.step);
}

/** The cell of the grid that a cell of its surround repeats. */
export function repeatedCell({ width }: Grid, { copies, isMirrored }: Surround, cell: Cell): Cell {
  if (!isMirrored) return placeInCopy(copies, cell);
  const { column, row } = placeInCopy(copies, { column: width - 1 - cell.column, row: cell.row });
  return { column: width - 1 - column, row };
}

/** More rectangles than this are not worth drawing one by one. */
const MOST_BOXES = 64;

/** Where a rectangle of the grid shows: itself, and its copies in the surround. Null: nearly everywhere. */
export function shownBoxes(picture: CellPicture, box: CellBox): CellBox[] | null {
  const { grid, surround } = picture;
  if (!surround) return [box];
  const { copies, isMirrored } = surround;
  const drawn = isMirrored ? mirrored(box, grid.width) : box;
  // Only cells of the copy that is repeated have copies.
  if (drawn.column >= copies.width || drawn.row >= copies.height) return [box];
  const area = pictureArea(picture);
  if ((area.width / copies.width) * (area.height / copies.height) > MOST_BOXES) return null;
  const boxes = [box];
  for (const place of placesInCopies(copies, drawn, isMirrored ? mirrored(area, grid.width) : area)) {
    const shown = { ...place, width: box.width, height: box.height };
    // Inside the grid stand its own cells, not copies.
    const isInGrid =
      shown.column >= 0 &&
      shown.row >= 0 &&
      shown.column + shown.width <= grid.width &&
      shown.row + shown.height <= grid.height;
    if (!isInGrid) boxes.push(isMirrored ? mirrored(shown, grid.width) : shown);
  }
  return boxes;
}

/** The box on a grid of that width seen from its other side. */
function mirrored(box: CellBox, width: number): CellBox {
  return { ...box, column: width - box.column - box.width };
}
