/** How the tube is seen: an immutable value between millimetres of the picture and pixels of the view. */
import type { Tube } from '@shared/piece/index.ts';
import { LEAST_CELL, MOST_CELL, type Room } from '../../canvas/index.ts';

export class TubeView {
  /**
   * @param scale pixels a millimetre
   * @param axis pixels from the left edge of the view to the axis
   * @param foot pixels from the top of the view to the lower edge of the tube
   */
  constructor(
    readonly scale: number,
    readonly axis: number,
    readonly foot: number,
  ) {}

  /** The whole tube as large as it goes, in the middle of the free part of `room`. */
  static fit(tube: Tube, room: Room): TubeView {
    const width = Math.max(1, room.width - room.left - room.right);
    const height = Math.max(1, room.height - room.top - room.bottom);
    const scale = within(Math.min(height / tube.tallMm, width / (2 * tube.radiusMm)), tube);
    return new TubeView(scale, room.left + width / 2, room.top + (height + tube.tallMm * scale) / 2);
  }

  /** Everything is seen where it is seen in the other: nothing need be drawn again. */
  isSame({ scale, axis, foot }: TubeView): boolean {
    return this.scale === scale && this.axis === axis && this.foot === foot;
  }

  x(mm: number): number {
    return this.axis + mm * this.scale;
  }

  y(mm: number): number {
    return this.foot - mm * this.scale;
  }

  /** A pixel in mm of the picture. */
  mmAt(x: number, y: number): { readonly x: number; readonly y: number } {
    return { x: (x - this.axis) / this.scale, y: (this.foot - y) / this.scale };
  }

  /** `factor` times as large, within limits, the height `y` staying on its row and the axis where it is. */
  zoomedAt(factor: number, y: number, tube: Tube): TubeView {
    const scale = within(this.scale * factor, tube);
    return new TubeView(scale, this.axis, y + (this.foot - y) * (scale / this.scale));
  }

  /** Moved up or down, no further than where the tube ends; one that has room stays whole in it. */
  movedBy(dy: number, tube: Tube, room: Room): TubeView {
    const tall = tube.tallMm * this.scale;
    const [highest, lowest] = [room.height - room.bottom, room.top + tall].sort((one, other) => one - other);
    const foot = Math.min(Math.max(this.foot + dy, highest as number), lowest as number);
    return foot === this.foot ? this : new TubeView(this.scale, this.axis, foot);
  }
}

function within(scale: number, { tallestRowMm }: Tube): number {
  return Math.min(Math.max(scale, LEAST_CELL / tallestRowMm), MOST_CELL / tallestRowMm);
}
