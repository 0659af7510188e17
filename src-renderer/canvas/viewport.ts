/**
 * How cells are seen: an immutable value between cells and pixels of the view.
 *
 * Pixels are CSS pixels from the upper left corner of the view, y downwards.
 * Cells are counted from the lower left corner of the chart, rows upwards, so
 * row 0 stands at the bottom as the trade reads charts. A turned view is seen
 * from the other side: its columns run to the left, and its `cellWidth` is
 * negative.
 */
import type { Cell, CellBox } from '@shared/grid/index.ts';

/** A rectangle in pixels. */
export interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The box with so many pixels more on each side. */
export function withBorder({ left, top, width, height }: PixelBox, border: number): PixelBox {
  return { left: left - border, top: top - border, width: width + 2 * border, height: height + 2 * border };
}

/** The smallest box around points of the view. */
export function boxAround(points: readonly { readonly x: number; readonly y: number }[]): PixelBox {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

/** The view, and how much of each side of it is taken by something else. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height of a cell in pixels: below, rows melt together; above, three cells fill the screen. */
export const LEAST_CELL = 0.1;
export const MOST_CELL = 120;

/** Pixels of a chart that stay in view however far it is panned. */
const LEAST_KEPT = 80;

export class Viewport {
  /**
   * @param cellWidth pixels a column, negative where columns run to the left
   * @param cellHeight pixels a row
   * @param x left edge of column 0
   * @param y lower edge of row 0
   */
  constructor(
    readonly cellWidth: number,
    readonly cellHeight: number,
    readonly x: number,
    readonly y: number,
  ) {}

  /**
   * Shows all of `box` as large as it goes, in the middle of the free part of
   * `room`. `aspect` is how many times as wide as tall a cell is; `mostCell`
   * keeps a small motif from filling the wall.
   */
  static fit(box: CellBox, aspect: number, room: Room, mostCell = MOST_CELL): Viewport {
    const width = Math.max(1, room.width - room.left - room.right);
    const height = Math.max(1, room.height - room.top - room.bottom);
    const cellHeight = clamp(Math.min(height / box.height, width / (box.width * aspect)), LEAST_CELL, mostCell);
    const cellWidth = cellHeight * aspect;
    const x = room.left + (width - box.width * cellWidth) / 2 - box.column * cellWidth;
    const y = room.top + (height + box.height * cellHeight) / 2 + box.row * cellHeight;
    return new Viewport(cellWidth, cellHeight, x, y);
  }

  /** Everything is seen where it is seen in the other: nothing need be drawn again. */
  isSame(other: Viewport): boolean {
    const { cellWidth, cellHeight, x, y } = other;
    return this.cellWidth === cellWidth && this.cellHeight === cellHeight && this.x === x && this.y === y;
  }

  /** How many times as wide as tall a cell is. */
  get aspect(): number {
    return Math.abs(this.cellWidth) / this.cellHeight;
  }

  /** The same seen from the other side: column c takes the place of column −1 − c. */
  turned(): Viewport {
    return new Viewport(-this.cellWidth, this.cellHeight, this.x, this.y);
  }

  get isTurned(): boolean {
    return this.cellWidth < 0;
  }

  /** Pixels a column takes. */
  get columnWidth(): number {
    return Math.abs(this.cellWidth);
  }

  /** Pixel of the edge between a column and the one before it; its left edge unless the view is turned. */
  left(column: number): number {
    return this.x + column * this.cellWidth;
  }

  /** Pixel of the upper edge of a row. */
  top(row: number): number {
    return this.y - (row + 1) * this.cellHeight;
  }

  /** The pixels that columns `first` … `last` take, from left to right. */
  span(first: number, last: number): { readonly left: number; readonly right: number } {
    const [from, to] = [this.left(first), this.left(last + 1)];
    return from <= to ? { left: from, right: to } : { left: to, right: from };
  }

  /** The cell under a pixel; it need not lie on any grid. */
  cellAt(x: number, y: number): Cell {
    return { column: Math.floor((x - this.x) / this.cellWidth), row: Math.floor((this.y - y) / this.cellHeight) };
  }

  /** The pixels that a rectangle of cells covers. */
  pixels(box: CellBox): PixelBox {
    return {
      left: this.span(box.column, box.column + box.width - 1).left,
      top: this.top(box.row + box.height - 1),
      width: box.width * this.columnWidth,
      height: box.height * this.cellHeight,
    };
  }

  /** The cells that show, wholly or in part, in a view of `width` × `height` pixels. */
  cellsIn(width: number, height: number): CellBox {
    return this.cellsOf({ left: 0, top: 0, width, height });
  }

  /** The cells that show, wholly or in part, in a part of the view. */
  cellsOf({ left, top, width, height }: PixelBox): CellBox {
    const one = this.cellAt(left, top + height);
    const other = this.cellAt(left + width, top);
    const column = Math.min(one.column, other.column);
    return {
      column,
      row: one.row,
      width: Math.abs(other.column - one.column) + 1,
      height: other.row - one.row + 1,
    };
  }

  pannedBy(dx: number, dy: number): Viewport {
    return new Viewport(this.cellWidth, this.cellHeight, this.x + dx, this.y + dy);
  }

  /** `factor` times as large, within limits, with the pixel (`x`, `y`) staying on its cell. */
  zoomedAt(factor: number, x: number, y: number): Viewport {
    const cellHeight = clamp(this.cellHeight * factor, LEAST_CELL, MOST_CELL);
    const real = cellHeight / this.cellHeight;
    return new Viewport(this.cellWidth * real, cellHeight, x + (this.x - x) * real, y + (this.y - y) * real);
  }

  /** Cells of another proportion but the same height, the pixel `x` staying on its cell. */
  withAspect(aspect: number, x: number): Viewport {
    const cellWidth = this.cellHeight * aspect;
    return new Viewport(cellWidth, this.cellHeight, x + (this.x - x) * (cellWidth / this.cellWidth), this.y);
  }

  /** Panned no further than needed for `box` to keep at least `least` pixels (or all of itself) in the view. */
  keeping(box: CellBox, room: Room, least = LEAST_KEPT): Viewport {
    const { left, top, width, height } = this.pixels(box);
    const keepX = Math.min(least, width);
    const keepY = Math.min(least, height);
    const wantedLeft = clamp(left, room.left + keepX - width, room.width - room.right - keepX);
    const wantedTop = clamp(top, room.top + keepY - height, room.height - room.bottom - keepY);
    return wantedLeft === left && wantedTop === top ? this : this.pannedBy(wantedLeft - left, wantedTop - top);
  }

  /** Panned no further than needed for the whole of `box` (a cell, say) to show, its lower left corner first. */
  showing(box: CellBox, room: Room): Viewport {
    const { left, top, width, height } = this.pixels(box);
    const dx = intoSpan(left, width, room.left, room.width - room.right);
    const dy = -intoSpan(-top - height, height, room.bottom - room.height, -room.top);
    return dx === 0 && dy === 0 ? this : this.pannedBy(dx, dy);
  }
}

/** How far [start, start + length] must move to lie within [from, to]; its start counts if it is too long. */
function intoSpan(start: number, length: number, from: number, to: number): number {
  if (start < from || length > to - from) return from - start;
  return start + length > to ? to - length - start : 0;
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), Math.max(least, most));
}

/** The ways of the pointer over a viewport; `look` takes what is seen then. */
export function panAndZoom(
  view: () => Viewport,
  look: (next: Viewport) => void,
): { panBy(dx: number, dy: number): void; zoomAt(factor: number, x: number, y: number): void } {
  return {
    panBy: (dx, dy) => look(view().pannedBy(dx, dy)),
    zoomAt: (factor, x, y) => look(view().zoomedAt(factor, x, y)),
  };
}
