/** What a cell stage shows: a grid, the colours of its yarns, and its copies faint around it. */
import type { CellBox, Grid } from '@shared/grid/index.ts';

/** Neighbouring copies around a grid: the lower left `tileWidth` × `tileHeight` cells of it, repeated. */
export interface Surround {
  readonly tileWidth: number;
  readonly tileHeight: number;
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
        a.tileWidth === b.tileWidth &&
        a.tileHeight === b.tileHeight &&
        a.columns === b.columns &&
        a.rows === b.rows &&
        a.strength === b.strength))
  );
}

/** More rectangles than this are not worth drawing one by one. */
const MOST_BOXES = 64;

/** Where a rectangle of the grid shows: itself, and its copies in the surround. Null: nearly everywhere. */
export function shownBoxes(picture: CellPicture, box: CellBox): CellBox[] | null {
  const { grid, surround } = picture;
  // Only cells of the tile have copies.
  if (!surround || box.column >= surround.tileWidth || box.row >= surround.tileHeight) return [box];
  const { tileWidth, tileHeight } = surround;
  const area = pictureArea(picture);
  if ((area.width / tileWidth) * (area.height / tileHeight) > MOST_BOXES) return null;
  const boxes = [box];
  const startColumn = firstCopy(box.column, box.width, area.column, tileWidth);
  const startRow = firstCopy(box.row, box.height, area.row, tileHeight);
  for (let row = startRow; row < area.row + area.height; row += tileHeight) {
    for (let column = startColumn; column < area.column + area.width; column += tileWidth) {
      // Inside the grid stand its own cells, not copies of the tile.
      const isInGrid = column >= 0 && row >= 0 && column + box.width <= grid.width && row + box.height <= grid.height;
      if (!isInGrid) boxes.push({ ...box, column, row });
    }
  }
  return boxes;
}

/** The first position of a copy of `start` … `start + length` that reaches past `from`. */
function firstCopy(start: number, length: number, from: number, tile: number): number {
  return start + (Math.floor((from - start - length) / tile) + 1) * tile;
}
