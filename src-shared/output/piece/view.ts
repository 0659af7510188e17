/**
 * The piece on paper: where a needle and a row come to lie.
 *
 * Each section is as wide and as tall as its own gauge makes it, all of them at
 * one scale and centred on the middle of the bed. Rows of one gauge are one
 * part; what stands on a row goes by its part, and a line that follows a needle
 * steps aside where parts meet. A piece of one gauge has a single part.
 */
import type { Slot } from '../../bed/index.ts';
import { edgesAt, layOut, type LaidRun } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Point } from '../model.ts';
import { rowsMeasured } from './row-marks.ts';

/** Rows `first` … `last` (1-based) of one gauge. Needles run from left to right as the knitter sees them, rows from the bottom up. */
export interface PartOnPaper {
  readonly first: number;
  readonly last: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Left edge of a needle. */
  readonly x: (slot: number) => number;
  /** Lower edge of a row; the upper edge is that of the row above. */
  readonly y: (row: number) => number;
}

/** What of a plan says how the piece lies. */
type Lying = Pick<Plan, 'outline' | 'gauges' | 'patterns'>;

/** Down which a line that follows a needle slants from one part to another: lines beside each other never meet. */
const SLANT_MM = 3;

export class PieceView {
  /** From the lowest up; never empty. */
  readonly parts: readonly PartOnPaper[];

  private constructor(
    private readonly size: {
      readonly runs: readonly LaidRun[];
      readonly rows: number;
      readonly scale: number;
      /** From the middle of the bed to the left edge of the drawing. */
      readonly middleMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
    },
    readonly left: number,
    readonly top: number,
  ) {
    const { runs, scale, middleMm, heightMm } = size;
    this.parts = runs.map(({ first, last, stitchMm, rowMm, footMm }) => {
      const [cellWidth, cellHeight] = [stitchMm / scale, rowMm / scale];
      const foot = top + heightMm - footMm / scale;
      return {
        first,
        last,
        cellWidth,
        cellHeight,
        x: (slot) => left + middleMm + slot * cellWidth,
        y: (row) => foot - (row - first) * cellHeight,
      };
    });
  }

  /**
   * The largest drawing in true proportion that is no wider and no taller than
   * given, the ruler under it too, at a scale of one to a number with one decimal.
   * Its top left corner is at (0, 0); see {@link movedTo}.
   */
  static within(plan: Lying, mostWidthMm: number, mostHeightMm: number): PieceView {
    const { outline, gauges } = plan;
    const runs = layOut(gauges)
      .filter(({ first }) => first <= outline.rows)
      .map((run) => ({ ...run, last: Math.min(run.last, outline.rows) }));
    const lowest = runs[0] as LaidRun;
    // The ruler's needles stand as on row 1, those of rows above it too.
    const ruled = rowsMeasured(plan).map((row) => ({ ...edgesAt(outline, row), mm: lowest.stitchMm }));
    let [left, right, fullHeight] = [Infinity, -Infinity, 0];
    const reach = (first: number, last: number, mm: number): void => {
      left = Math.min(left, first * mm);
      right = Math.max(right, (last + 1) * mm);
    };
    for (const { first, last, mm } of ruled) reach(first, last, mm);
    for (const { first, last, stitchMm, rowMm, footMm } of runs) {
      for (let row = first; row <= last; row++) {
        reach(outline.first[row - 1] as number, outline.last[row - 1] as number, stitchMm);
      }
      fullHeight = footMm + (last - first + 1) * rowMm;
    }
    const most = Math.max((right - left) / mostWidthMm, fullHeight / mostHeightMm);
    const scale = Math.max(1, Math.ceil(most * 10) / 10);
    return new PieceView(
      {
        runs,
        rows: outline.rows,
        scale,
        middleMm: -left / scale,
        widthMm: (right - left) / scale,
        heightMm: fullHeight / scale,
      },
      0,
      0,
    );
  }

  /** The same drawing with its top left corner at (`left`, `top`). */
  movedTo(left: number, top: number): PieceView {
    return new PieceView(this.size, left, top);
  }

  get rows(): number {
    return this.size.rows;
  }

  /** The drawing is one to this. */
  get scale(): number {
    return this.size.scale;
  }

  get widthMm(): number {
    return this.size.widthMm;
  }

  get heightMm(): number {
    return this.size.heightMm;
  }

  get right(): number {
    return this.left + this.widthMm;
  }

  /** The part that a row is of; above the piece, the uppermost. */
  at(row: number): PartOnPaper {
    return this.parts.find(({ last }) => row <= last) ?? (this.parts.at(-1) as PartOnPaper);
  }

  /** Left edge of a needle on a row. */
  x(slot: number, row: number): number {
    return this.at(row).x(slot);
  }

  /** Lower edge of a row; the upper edge is that of the row above. */
  y(row: number): number {
    return this.at(row).y(row);
  }

  /** Height of the middle of a row. */
  middleOf(row: number): number {
    const { y, cellHeight } = this.at(row);
    return y(row) - cellHeight / 2;
  }

  /** The corners, from the upper left one to the right, of the stitches on needles `first` … `last`, rows `firstRow` … `lastRow`. */
  corners(first: number, last: number, firstRow: number, lastRow: number): Point[] {
    const sides = this.parts
      .filter((part) => part.first <= lastRow && part.last >= firstRow)
      .map((part) => ({
        left: part.x(first),
        right: part.x(last + 1),
        foot: part.y(Math.max(firstRow, part.first)),
        head: part.y(Math.min(lastRow, part.last) + 1),
      }));
    const down = sides.toReversed().flatMap(({ right, head, foot }): Point[] => [
      [right, head],
      [right, foot],
    ]);
    const up = sides.flatMap(({ left, head, foot }): Point[] => [
      [left, foot],
      [left, head],
    ]);
    return [...up.slice(-1), ...down, ...up.slice(0, -1)];
  }

  /** The way down the middle of a needle from the lower edge of `row` to the height `to` below the piece. */
  wayDown(needle: Slot, row: number, to: number): Point[] {
    const x = (part: PartOnPaper): number => part.x(needle) + part.cellWidth / 2;
    const start = this.parts.indexOf(this.at(row));
    const points: Point[] = [[x(this.at(row)), this.y(row)]];
    for (let index = start; index > 0; index--) {
      const [upper, lower] = [this.parts[index] as PartOnPaper, this.parts[index - 1] as PartOnPaper];
      const y = upper.y(upper.first);
      if (row > upper.first || index < start) points.push([x(upper), y]);
      const tall = lower.y(lower.first) - y;
      points.push([x(lower), y + Math.min(SLANT_MM, tall / 2)]);
    }
    return [...points, [x(this.parts[0] as PartOnPaper), to]];
  }
}
