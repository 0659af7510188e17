/** How wide and how long a piece is, at the gauges that its rows have. */
import { stitchWidthMm } from './gauge.ts';
import { gaugeAt, gaugesBetween, lengthMm, type Gauges } from './gauges.ts';
import type { Shape } from './shape-model.ts';

/** Where a width is named. */
export type WidthAt = 'cast-on' | 'waist' | 'chest' | 'top';

export interface Width {
  readonly at: WidthAt;
  readonly row: number;
  readonly stitches: number;
  readonly mm: number;
}

export interface PieceSize {
  readonly kind: Shape['kind'];
  readonly rows: number;
  readonly lengthMm: number;
  /** From the bottom up, as the kind of shape has them; a straight piece has one. */
  readonly widths: readonly Width[];
  /** Of a straight piece, whose width changes with the gauge alone: its narrowest and widest rows. */
  readonly straightMm: readonly [narrowest: number, widest: number];
}

/** The size of a shape as it is described, whether or not it can be knitted so. */
export function sizeOf(shape: Shape, gauges: Gauges): PieceSize {
  const { kind, rows } = shape;
  const width = (at: WidthAt, row: number, stitches: number): Width => {
    const on = Math.min(rows, Math.max(1, row));
    return { at, row: on, stitches, mm: stitches * stitchWidthMm(gaugeAt(gauges, on)) };
  };
  const castOn = width('cast-on', 1, shape.stitches);
  const across = gaugesBetween(gauges, 1, rows).map((gauge) => castOn.stitches * stitchWidthMm(gauge));
  return {
    kind,
    rows,
    lengthMm: lengthMm(gauges, 1, rows),
    widths: [castOn, ...othersOf(shape, width)],
    straightMm: [Math.min(...across), Math.max(...across)],
  };
}

function othersOf(shape: Shape, width: (at: WidthAt, row: number, stitches: number) => Width): Width[] {
  switch (shape.kind) {
    case 'rectangle':
      return [];
    case 'tapered':
      return [width('top', shape.rows, shape.stitchesAtTop)];
    case 'steps': {
      const added = shape.steps.reduce((sum, { left, right }) => sum + left + right, 0);
      return [width('top', shape.rows, shape.stitches + added)];
    }
    case 'body': {
      const { rowsToWaist, rowsToChest } = shape;
      return [
        width('waist', rowsToWaist, shape.stitchesAtWaist),
        width('chest', rowsToWaist + rowsToChest, shape.stitchesAtChest),
      ];
    }
  }
}
