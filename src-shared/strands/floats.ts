/**
 * Where every strand lies, row by row.
 *
 * A strand that knits in a row has a span there: from the first to the last
 * needle it knits; the main yarn's is from edge to edge of the piece. Needles
 * inside the span that it does not knit are floats. A strand that does not knit in a row waits: main
 * does on a row all in contrast, and floats nowhere on it.
 */
import { carriageSide, widthOf, type Run, type Side, type Slot } from '../bed/index.ts';
import { alikeRows, type Fabric } from '../fabric/index.ts';
import {
  edgesAt,
  isSameGauge,
  stitchWidthMm,
  type FloatLimit,
  type Gauge,
  type Gauges,
  type Outline,
} from '../piece/index.ts';
import { internSpans } from './interned.ts';
import { longestWithin } from './limit.ts';
import {
  MAIN_STRAND,
  StrandLayer,
  type FloatScale,
  type RowShare,
  type ScaleTotals,
  type StrandRun,
} from './strand-layer.ts';
import type { Float, StrandId } from './types.ts';

/** A placed group that has a ball of its own. */
export interface OwnBall extends Run {
  /** Index among the placed groups. */
  readonly group: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** What the strands depend on besides the fabric. */
export interface Laying {
  /** Palette index of the main yarn. */
  readonly main: number;
  readonly outline: Outline;
  readonly ownBalls: readonly OwnBall[];
  readonly startSide: Side;
  readonly gauges: Gauges;
  readonly floatLimit: FloatLimit;
}

/** Needles that knit one yarn other than main. */
export type ContrastRun = Run & { readonly yarn: number };

export interface LaidRow {
  /** The carriage's side before the row. */
  readonly from: Side;
  readonly edges: Run;
  /** Needles that knit a yarn other than main, left to right, each run in one yarn. */
  readonly contrast: readonly ContrastRun[];
  /** In the order of their last needles. */
  readonly floats: readonly Float[];
  /** Some float of the row is over the limit. */
  readonly isOver: boolean;
  /** Contrast strands that knit in this row, in the order of their first needles. */
  readonly strands: readonly StrandRun[];
  /** False on a row all in contrast, on which main waits. */
  readonly isMainKnitted: boolean;
}

/** Stitches that each strand knits, and floats over, on all rows of one gauge. */
export interface GaugeTotals extends ScaleTotals {
  readonly gauge: Gauge;
}

export interface LaidStrands {
  /** Index 0 is the main yarn, the others stand in the order in which they first knit. */
  readonly strands: readonly StrandId[];
  /** One for each gauge, in the order in which they first come. */
  readonly totals: readonly GaugeTotals[];
  /** The first and last row in which each strand knits; 0 where it does not. */
  readonly firstRow: readonly number[];
  readonly lastRow: readonly number[];
  /** Index 0 is row 1. */
  readonly rows: readonly LaidRow[];
}

/**
 * Lays all strands of a fabric. Linear in its cells; rows that are alike are
 * laid once, and share their runs and floats.
 */
export function layStrands(fabric: Fabric, laying: Laying): LaidStrands {
  const { outline } = laying;
  const scales = scalesOf(laying);
  const [lowest] = scales as [ScaleRun];
  const layer = new StrandLayer({ main: laying.main, firstSlot: fabric.first }, lowest.scale);
  let run = 0;
  const ballsByRow = ownBallsByRow(laying.ownBalls, outline.rows);
  const layRow = rowLayer(fabric, laying, layer);
  const rows: LaidRow[] = [];
  const alike = alikeRows(fabric);
  /** By the lowest of the rows that are alike: what was laid on this gauge. */
  let known: (Known | undefined)[] = [];

  for (let row = 1; row <= outline.rows; row++) {
    const balls = ballsByRow[row];
    if (row > (scales[run] as ScaleRun).last) {
      layer.changeScale((scales[++run] as ScaleRun).scale);
      known = [];
    }
    const like = balls ? undefined : known[alike[row - 1] as number];
    if (like) {
      like.shares ??= layer.sharesOf(like.row, widthOf(edgesAt(outline, row)));
      layer.repeatRow(like.shares);
      rows.push({ ...like.row, from: carriageSide(row, laying.startSide) });
      continue;
    }
    const laid = layRow(row, balls);
    rows.push(laid);
    if (!balls) known[alike[row - 1] as number] = { row: laid, shares: null };
  }
  const { strands, firstRow, lastRow } = layer;
  const found = new Map(scales.slice(0, run + 1).map(({ scale, gauge }) => [scale, gauge]));
  const totals = [...found].map(([scale, gauge]) => ({ gauge, ...layer.totalsOn(scale) }));
  return { strands, totals, firstRow, lastRow, rows };
}

/** Lays one row (1-based) of a fabric after the other, with the balls of groups that are in use on it. */
export function rowLayer(
  { cells, width, first: firstSlot }: Fabric,
  { outline, main, startSide }: Pick<Laying, 'outline' | 'main' | 'startSide'>,
  layer: StrandLayer,
): (row: number, balls?: readonly OwnBall[]) => LaidRow {
  const slotAt = (column: number): Slot => (firstSlot + column) as Slot;
  const edgesOf = internSpans((first, last): Run => ({ first: slotAt(first), last: slotAt(last) }));
  const contrastOf: ((first: number, last: number) => ContrastRun)[] = [];
  /** Contrast runs of the row at hand; kept from row to row to spare its growing. */
  const contrast: ContrastRun[] = [];
  return (row, balls) => {
    const firstColumn = (outline.first[row - 1] as number) - firstSlot;
    const lastColumn = (outline.last[row - 1] as number) - firstSlot;
    const start = (row - 1) * width;
    let runs = 0;
    layer.startRow(firstColumn);
    let column = firstColumn;
    while (column <= lastColumn) {
      const yarn = cells[start + column] as number;
      let end = column;
      while (end < lastColumn && cells[start + end + 1] === yarn) end++;
      if (yarn === main) {
        layer.knit(MAIN_STRAND, column, end);
      } else {
        contrastOf[yarn] ??= internSpans((first, last) => ({ first: slotAt(first), last: slotAt(last), yarn }));
        contrast[runs++] = contrastOf[yarn](column, end);
        if (balls) knitByBall(layer, yarn, column, end, balls, firstSlot);
        else layer.knit(layer.strandOf(yarn, null), column, end);
      }
      column = end + 1;
    }
    return {
      from: carriageSide(row, startSide),
      edges: edgesOf(firstColumn, lastColumn),
      contrast: contrast.slice(0, runs),
      ...layer.endRow(lastColumn),
    };
  };
}

/** A row that was laid, and what each strand has of it, once that is asked for. */
interface Known {
  readonly row: LaidRow;
  shares: readonly RowShare[] | null;
}

/** Rows up to `last` of one gauge, and what it makes of their floats. */
export interface ScaleRun {
  readonly gauge: Gauge;
  readonly scale: FloatScale;
  readonly last: number;
}

/** Runs of one gauge share one scale, however far apart they lie. */
export function scalesOf({ gauges, floatLimit }: Pick<Laying, 'gauges' | 'floatLimit'>): ScaleRun[] {
  const runs: ScaleRun[] = [];
  for (const { gauge, last } of gauges) {
    const known = runs.find((run) => isSameGauge(run.gauge, gauge));
    const scale = known?.scale ?? {
      stitchWidthMm: stitchWidthMm(gauge),
      longest: longestWithin(floatLimit, gauge),
    };
    runs.push({ gauge, scale, last });
  }
  return runs;
}

/** Knits a run of columns, changing the ball from group to group. */
function knitByBall(
  layer: StrandLayer,
  yarn: number,
  first: number,
  last: number,
  balls: readonly OwnBall[],
  firstSlot: number,
): void {
  let column = first;
  for (const ball of balls) {
    const ballFirst = Math.max(column, ball.first - firstSlot);
    const ballLast = Math.min(last, ball.last - firstSlot);
    if (ballFirst > ballLast) continue;
    if (ballFirst > column) layer.knit(layer.strandOf(yarn, null), column, ballFirst - 1);
    layer.knit(layer.strandOf(yarn, ball.group), ballFirst, ballLast);
    column = ballLast + 1;
  }
  if (column <= last) layer.knit(layer.strandOf(yarn, null), column, last);
}

/** The own balls in use on each row (index = row), left to right. */
function ownBallsByRow(balls: readonly OwnBall[], rows: number): (readonly OwnBall[] | undefined)[] {
  const byRow = new Array<OwnBall[] | undefined>(rows + 1);
  for (const ball of [...balls].sort((a, b) => a.first - b.first)) {
    for (let row = ball.firstRow; row <= ball.lastRow; row++) (byRow[row] ??= []).push(ball);
  }
  return byRow;
}
