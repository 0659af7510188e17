/**
 * A picture of cells, one pixel each, kept off the screen.
 *
 * It is blitted enlarged without smoothing, so the cost of drawing depends on
 * the size of the view and not on the number of cells.
 */
import type { CellBox } from '@shared/grid/index.ts';
import { clippedBox } from './changed.ts';
import { pictureArea, type CellPicture } from './picture.ts';

const OPEN = 0;

/** True where the lowest byte of a word comes first; ImageData wants red, green, blue, alpha in this order. */
const isLittleEndian = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1;

export class CellBitmap {
  /** The cells it holds; pixel (0, 0) is the upper left one of them. */
  readonly area: CellBox;
  readonly canvas: HTMLCanvasElement;
  readonly #context: CanvasRenderingContext2D;
  readonly #image: ImageData;
  readonly #words: Uint32Array;

  constructor(picture: CellPicture) {
    this.area = pictureArea(picture);
    this.canvas = document.createElement('canvas');
    this.canvas.width = this.area.width;
    this.canvas.height = this.area.height;
    const context = this.canvas.getContext('2d');
    if (!context) throw new Error('No 2D canvas');
    this.#context = context;
    this.#image = context.createImageData(this.area.width, this.area.height);
    this.#words = new Uint32Array(this.#image.data.buffer);
    this.paint(picture, [this.area]);
  }

  /** Takes the cells inside `boxes` from the picture, which must have the area of the first one. */
  paint(picture: CellPicture, boxes: readonly CellBox[]): void {
    const { grid, surround } = picture;
    const { area } = this;
    const strong = Uint32Array.from(picture.colours, (colour) => pixelOf(colour, 1));
    const faint = Uint32Array.from(picture.colours, (colour) => pixelOf(colour, surround?.strength ?? 0));
    for (const wanted of boxes) {
      const box = clippedBox(wanted, area);
      if (!box) continue;
      for (let row = box.row; row < box.row + box.height; row++) {
        const rowInside = row >= 0 && row < grid.height;
        const tileRow = surround ? modulo(row, surround.tileHeight) : 0;
        const start = (area.row + area.height - 1 - row) * area.width - area.column;
        for (let column = box.column; column < box.column + box.width; column++) {
          const isInside = rowInside && column >= 0 && column < grid.width;
          const source = isInside
            ? row * grid.width + column
            : surround
              ? tileRow * grid.width + modulo(column, surround.tileWidth)
              : -1;
          const cell = grid.cells[source];
          this.#words[start + column] = cell === undefined ? OPEN : ((isInside ? strong : faint)[cell] ?? OPEN);
        }
      }
      const x = box.column - area.column;
      const y = area.row + area.height - box.row - box.height;
      this.#context.putImageData(this.#image, 0, 0, x, y, box.width, box.height);
    }
  }
}

/** `#rrggbb` as a pixel of an ImageData seen as 32-bit words. */
function pixelOf(colour: string | null, alpha: number): number {
  if (colour === null) return OPEN;
  const rgb = Number.parseInt(colour.slice(1), 16);
  const rgba = ((rgb << 8) | Math.round(alpha * 255)) >>> 0;
  if (!isLittleEndian) return rgba;
  return ((rgba & 0xff) << 24) | ((rgba & 0xff00) << 8) | ((rgba >>> 8) & 0xff00) | (rgba >>> 24);
}

function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}
