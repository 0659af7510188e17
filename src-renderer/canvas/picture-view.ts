/**
 * How a picture is seen: an immutable value between pixels of the picture and
 * CSS pixels of the view, both from the upper left corner, y downwards. A
 * picture is never smaller than it fits, nor dragged off the view.
 */
import type { Point } from './gestures.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** What a picture is seen through: its own size, that of the view, and the pixels that stay clear around it. */
export interface PictureRoom {
  readonly picture: Size;
  readonly view: Size;
  readonly margin: number;
}

/** How many times as large as it fits a picture is seen at most. */
const MOST_ZOOM = 32;

/** Below this share more than what fits, a picture fits: what is left is rounding. */
const ROUNDING = 1.001;

export class PictureView {
  /**
   * @param scale pixels of the view for one of the picture
   * @param x left edge of the picture
   * @param y upper edge of the picture
   */
  constructor(
    readonly scale: number,
    readonly x: number,
    readonly y: number,
  ) {}

  /** All of the picture, as large as it goes, in the middle. */
  static fit({ picture, view, margin }: PictureRoom): PictureView {
    const free = (side: number): number => Math.max(1, side - 2 * margin);
    const scale = Math.min(free(view.width) / picture.width, free(view.height) / picture.height);
    return new PictureView(scale, (view.width - picture.width * scale) / 2, (view.height - picture.height * scale) / 2);
  }

  isSame({ scale, x, y }: PictureView): boolean {
    return this.scale === scale && this.x === x && this.y === y;
  }

  /** Where a point of the picture is seen. */
  seen({ x, y }: Point): Point {
    return { x: this.x + x * this.scale, y: this.y + y * this.scale };
  }

  /** The point of the picture under a pixel of the view; it need not lie on the picture. */
  under({ x, y }: Point): Point {
    return { x: (x - this.x) / this.scale, y: (y - this.y) / this.scale };
  }

  pannedBy(dx: number, dy: number): PictureView {
    return new PictureView(this.scale, this.x + dx, this.y + dy);
  }

  /** `factor` times as large, with the pixel (`x`, `y`) staying on its point of the picture. */
  zoomedAt(factor: number, x: number, y: number): PictureView {
    return new PictureView(this.scale * factor, x + (this.x - x) * factor, y + (this.y - y) * factor);
  }

  /**
   * The nearest view that keeps the picture before the eyes: no smaller than it
   * fits, no larger than {@link MOST_ZOOM} times that, and no emptier beside it
   * than the margin. Null: all of it is seen.
   */
  kept(room: PictureRoom): PictureView | null {
    const fit = PictureView.fit(room);
    if (this.scale <= fit.scale * ROUNDING) return null;
    const { picture, view, margin } = room;
    const most = fit.scale * MOST_ZOOM;
    const held = this.scale <= most ? this : this.zoomedAt(most / this.scale, view.width / 2, view.height / 2);
    const along = (at: number, length: number, free: number): number => {
      const spare = free - 2 * margin - length;
      return spare >= 0 ? margin + spare / 2 : Math.min(margin, Math.max(margin + spare, at));
    };
    return new PictureView(
      held.scale,
      along(held.x, picture.width * held.scale, view.width),
      along(held.y, picture.height * held.scale, view.height),
    );
  }

  /** Panned no further than needed for a point of the picture to be seen, `clear` pixels from the edges. */
  showing(point: Point, view: Size, clear: number): PictureView {
    const { x, y } = this.seen(point);
    const into = (at: number, length: number): number =>
      Math.min(Math.max(at, Math.min(clear, length / 2)), Math.max(length - clear, length / 2)) - at;
    const [dx, dy] = [into(x, view.width), into(y, view.height)];
    return dx === 0 && dy === 0 ? this : this.pannedBy(dx, dy);
  }
}
