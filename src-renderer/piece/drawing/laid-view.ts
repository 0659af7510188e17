/**
 * How the piece is seen, each section by its own gauge.
 *
 * Rows of one gauge are one part, with a viewport of its own: all parts are
 * centred on the middle of the bed and stand one on the other, as the piece
 * lies in the hand. What is drawn on a row goes by the viewport of its part; a
 * line that follows a needle steps aside where parts of unlike gauges meet. A
 * piece of one gauge has a single part, the view itself.
 */
import type { CellBox } from '@shared/grid/index.ts';
import { layOut, rowHeightMm, stitchWidthMm, type Gauge, type Gauges, type Outline } from '@shared/piece/index.ts';
import { Viewport, type Point } from '../../canvas/index.ts';
import type { StitchSpot } from '../stitch-spot.ts';

/** Rows `first` … `last` (1-based) of one gauge, as they are seen. */
export interface PartView {
  readonly first: number;
  readonly last: number;
  readonly view: Viewport;
}

/** What of a plan and its piece says how the piece is laid out. */
export interface Laying {
  readonly plan: { readonly outline: Outline; readonly gauges: Gauges };
  readonly project: { readonly piece: { readonly gauge: Gauge } };
}

export class LaidView {
  /** From the lowest up; never empty. */
  readonly parts: readonly PartView[];

  /** `whole` is the view of stitches of the piece's own gauge, from its lowest row up. */
  constructor(
    readonly whole: Viewport,
    { plan: { outline, gauges }, project }: Laying,
  ) {
    this.parts = scaledRuns(outline, gauges, project.piece.gauge).map(({ first, last, across, up, foot }) => {
      const cellHeight = whole.cellHeight * up;
      const y = whole.y - foot * whole.cellHeight + (first - 1) * cellHeight;
      return { first, last, view: new Viewport(whole.cellWidth * across, cellHeight, whole.x, y) };
    });
  }

  /** Every row is seen where it is seen in the other: nothing need be drawn again. */
  isSame({ parts }: LaidView): boolean {
    return (
      this.parts.length === parts.length &&
      this.parts.every(({ first, last, view }, index) => {
        const other = parts[index] as PartView;
        return first === other.first && last === other.last && view.isSame(other.view);
      })
    );
  }

  /** The part that a row is of. */
  partOf(row: number): PartView {
    return this.parts.find(({ last }) => row <= last) ?? (this.parts.at(-1) as PartView);
  }

  /** The view of a row. */
  at(row: number): Viewport {
    return this.partOf(row).view;
  }

  /** The part at a height of the view; above and below the piece, the nearest. */
  partAtHeight(y: number): PartView {
    return this.parts.find(({ view, last }) => y >= view.top(last - 1)) ?? (this.parts.at(-1) as PartView);
  }

  /** The needle and row (1-based) under a pixel; it need not lie on the piece. */
  spotAt({ x, y }: Point): StitchSpot {
    const { view } = this.partAtHeight(y);
    const { column, row } = view.cellAt(x, y);
    return { needle: column, row: row + 1 };
  }

  /** The row at a height of the view, and how it is seen; above and below the piece, the nearest. */
  rowAtHeight(y: number): { readonly row: number; readonly view: Viewport } {
    const { first, last, view } = this.partAtHeight(y);
    return { row: Math.min(Math.max(view.cellAt(0, y).row + 1, first), last), view };
  }

  /** Pixel of the cast-on edge. */
  get castOn(): number {
    return this.whole.top(-1);
  }

  /**
   * The way of a needle from the height `from` on `row` down to the height `to`:
   * `x` says where it is in a view. It steps aside between parts.
   */
  wayDown(row: number, from: number, to: number, x: (view: Viewport) => number): Point[] {
    const start = this.parts.indexOf(this.partOf(row));
    const points = [{ x: x(this.at(row)), y: from }];
    for (let index = start; index > 0; index--) {
      const [upper, lower] = [this.parts[index] as PartView, this.parts[index - 1] as PartView];
      const y = upper.view.top(upper.first - 2);
      if (y >= to) break;
      points.push({ x: x(upper.view), y }, { x: x(lower.view), y });
    }
    const end = points.at(-1) as Point;
    return [...points, { x: end.x, y: to }];
  }

  /** The outline, from its upper left corner to the right, of the stitches on needles `first` … `last`, rows `firstRow` … `lastRow`, and `around` pixels about them. */
  corners(first: number, last: number, firstRow: number, lastRow: number, around = 0): Point[] {
    const sides = this.parts
      .filter((part) => part.first <= lastRow && part.last >= firstRow)
      .map((part) => {
        const { left, right } = part.view.span(first, last);
        const [lowest, highest] = [Math.max(firstRow, part.first), Math.min(lastRow, part.last)];
        const foot = part.view.top(lowest - 2) + (lowest === firstRow ? around : 0);
        const head = part.view.top(highest - 1) - (highest === lastRow ? around : 0);
        return { left: left - around, right: right + around, foot, head };
      });
    const down = sides.toReversed().flatMap(({ right, foot, head }) => [
      { x: right, y: head },
      { x: right, y: foot },
    ]);
    const up = sides.flatMap(({ left, foot, head }) => [
      { x: left, y: foot },
      { x: left, y: head },
    ]);
    return [...up.slice(-1), ...down, ...up.slice(0, -1)];
  }
}

/** A run beside the piece's own gauge: how many times as wide and tall its stitches are, and how many rows of that gauge its foot stands above the cast-on. */
interface ScaledRun {
  readonly first: number;
  readonly last: number;
  readonly across: number;
  readonly up: number;
  readonly foot: number;
}

function scaledRuns({ rows }: Outline, gauges: Gauges, gauge: Gauge): ScaledRun[] {
  return layOut(gauges)
    .filter(({ first }) => first <= rows)
    .map(({ first, last, stitchMm, rowMm, footMm }) => ({
      first,
      last: Math.min(last, rows),
      across: stitchMm / stitchWidthMm(gauge),
      up: rowMm / rowHeightMm(gauge),
      foot: footMm / rowHeightMm(gauge),
    }));
}

/** What the piece takes, in stitches and rows of its own gauge, counted as the whole view counts them. */
export function laidBox({ plan: { outline, gauges }, project }: Laying): CellBox {
  let [left, right, head] = [Infinity, -Infinity, 0];
  for (const { first, last, across, up, foot } of scaledRuns(outline, gauges, project.piece.gauge)) {
    for (let row = first; row <= last; row++) {
      left = Math.min(left, (outline.first[row - 1] as number) * across);
      right = Math.max(right, ((outline.last[row - 1] as number) + 1) * across);
    }
    head = foot + (last - first + 1) * up;
  }
  return { column: left, row: 0, width: right - left, height: head };
}
