/**
 * A picture of cells, one pixel each, kept off the screen.
 *
 * It is blitted enlarged without smoothing, so the cost of drawing depends on
 * the size of the view and not on the number of cells.
 */
import type { CellBox } from '@shared/grid/index.ts';
import { clippedBox, isWithin, joinedBox } from './changed.ts';
import { pictureArea, repeatedCell, type CellPicture } from './picture.ts';

const OPEN = 0;

/**
 * Up to this many cells are filled one by one. Writing pixels makes the
 * browser copy the whole bitmap when it stands on the screen: 200 × 1000
 * cells took 3 ms a stroke, filling one of them less than 0.1 ms.
 */
const MOST_FILLS = 64;

/** True where the lowest byte of a word comes first; ImageData wants red, green, blue, alpha in this order. */
const isLittleEndian = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1;

export class CellBitmap {
  /** The cells it holds; pixel (0, 0) is the upper left one of them. */
  readonly area: CellBox;
  readonly canvas: HTMLCanvasElement;
  readonly #context: CanvasRenderingContext2D;
  #image: ImageData | null = null;
  /** Around all cells that may be out of date, since they do not show; null if none is. */
  #late: CellBox | null = null;
  /** Inside this box no cell is out of date. */
  #upToDate: CellBox;

  constructor(picture: CellPicture) {
    this.area = pictureArea(picture);
    this.canvas = document.createElement('canvas');
    this.canvas.width = this.area.width;
    this.canvas.height = this.area.height;
    const context = this.canvas.getContext('2d');
    if (!context) throw new Error('No 2D canvas');
    this.#context = context;
    this.#upToDate = this.area;
    this.#write(picture, this.area);
  }

  /**
   * Takes the cells inside `boxes` from the picture, which must have the area of
   * the first one. Those beside `seen` may wait until they come into view: 1,600
   * cells all over a chart change with every one that symmetry and tiling paint.
   */
  paint(picture: CellPicture, boxes: readonly CellBox[], seen: CellBox = this.area): void {
    this.bringIntoView(picture, seen);
    for (const wanted of boxes) {
      const box = clippedBox(wanted, this.area);
      if (!box) continue;
      const shown = clippedBox(box, seen);
      if (shown && shown.width * shown.height <= MOST_FILLS) this.#fill(picture, shown);
      else if (shown) this.#write(picture, shown);
      if (isWithin(box, seen)) continue;
      this.#late = this.#late ? joinedBox(this.#late, box) : box;
      this.#upToDate = seen;
    }
  }

  /** Has the cells inside `seen` as they are in the picture, which is the last one that was painted. */
  bringIntoView(picture: CellPicture, seen: CellBox): void {
    if (!this.#late || isWithin(seen, this.#upToDate)) return;
    this.#write(picture, this.#late);
    this.#late = null;
    this.#upToDate = this.area;
  }

  #fill(picture: CellPicture, box: CellBox): void {
    const context = this.#context;
    context.clearRect(box.column - this.area.column, this.#line(box), box.width, box.height);
    for (let row = box.row; row < box.row + box.height; row++) {
      for (let column = box.column; column < box.column + box.width; column++) {
        const colour = picture.colours[cellShown(picture, column, row)];
        if (!colour) continue;
        context.globalAlpha = isInGrid(picture, column, row) ? 1 : (picture.surround?.strength ?? 0);
        context.fillStyle = colour;
        context.fillRect(column - this.area.column, this.area.row + this.area.height - 1 - row, 1, 1);
      }
    }
  }

  #write(picture: CellPicture, box: CellBox): void {
    const image = this.#imageOf(box);
    const pixels = new Uint32Array(image.data.buffer);
    const { grid, surround } = picture;
    const strong = paletteOf(picture.colours, 1);
    const faint = paletteOf(picture.colours, surround?.strength ?? 0);
    const end = box.column + box.width;
    let at = 0;
    for (let row = box.row + box.height - 1; row >= box.row; row--) {
      const isRowOfGrid = row >= 0 && row < grid.height;
      const from = isRowOfGrid ? Math.min(Math.max(0, box.column), end) : end;
      const to = isRowOfGrid ? Math.max(from, Math.min(grid.width, end)) : end;
      const around = (column: number): number => faint[cellShown(picture, column, row)] ?? OPEN;
      for (let column = box.column; column < from; column++) pixels[at++] = around(column);
      for (let cell = row * grid.width + from, last = row * grid.width + to; cell < last; cell++) {
        pixels[at++] = strong[grid.cells[cell] as number] as number;
      }
      for (let column = to; column < end; column++) pixels[at++] = around(column);
    }
    this.#context.putImageData(image, box.column - this.area.column, this.#line(box));
  }

  /** Room for the pixels of a box; kept for the next, since a stroke that others follow needs the same again and again. */
  #imageOf({ width, height }: CellBox): ImageData {
    if (this.#image?.width !== width || this.#image.height !== height) {
      this.#image = this.#context.createImageData(width, height);
    }
    return this.#image;
  }

  /** Pixel line of the upper edge of a box. */
  #line(box: CellBox): number {
    return this.area.row + this.area.height - box.row - box.height;
  }
}

function isInGrid({ grid }: CellPicture, column: number, row: number): boolean {
  return column >= 0 && row >= 0 && column < grid.width && row < grid.height;
}

/** Palette index of a cell of the grid or of the copies around it; -1 where there is nothing. */
export function cellShown(picture: CellPicture, column: number, row: number): number {
  const { grid, surround } = picture;
  if (isInGrid(picture, column, row)) return grid.cells[row * grid.width + column] ?? -1;
  if (!surround) return -1;
  const repeated = repeatedCell(grid, surround, { column, row });
  return grid.cells[repeated.row * grid.width + repeated.column] ?? -1;
}

/** The pixel of every palette index a cell may hold; those without a colour are open. */
function paletteOf(colours: CellPicture['colours'], alpha: number): Uint32Array {
  const pixels = new Uint32Array(256).fill(OPEN);
  colours.forEach((colour, index) => (pixels[index] = pixelOf(colour, alpha)));
  return pixels;
}

/** `#rrggbb` as a pixel of an ImageData seen as 32-bit words. */
function pixelOf(colour: string | null, alpha: number): number {
  if (colour === null) return OPEN;
  const rgb = Number.parseInt(colour.slice(1), 16);
  const rgba = ((rgb << 8) | Math.round(alpha * 255)) >>> 0;
  if (!isLittleEndian) return rgba;
  return ((rgba & 0xff) << 24) | ((rgba & 0xff00) << 8) | ((rgba >>> 8) & 0xff00) | (rgba >>> 24);
}
