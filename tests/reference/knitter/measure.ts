/**
 * What a fabric that has been knitted shows of its yarns: where they float,
 * where they go from row to row, and how long they are. Lengths in mm.
 */
import type { WrappingStrand } from './strands.ts';
import type { Step, StrandLaid } from './way.ts';

/** Stitches and rows in 10 cm. */
export interface GaugeOfRow {
  readonly stitches: number;
  readonly rows: number;
}

export type Gauging = (row: number) => GaugeOfRow;

/** Needles that a yarn lies behind, from the left. */
export interface MeasuredFloat {
  readonly row: number;
  readonly first: number;
  readonly last: number;
  readonly stitches: number;
  readonly mm: number;
  /** Needles that hold it, from the left: it was hung on them after the row, or taken into a chain behind them. */
  readonly liftedOn: readonly number[];
}

/** From the needle of a row where a yarn stopped to the one of a row above where it goes on. */
export interface MeasuredCarry {
  readonly row: number;
  readonly toRow: number;
  /** The outermost needles of it, from the left. */
  readonly first: number;
  readonly last: number;
  readonly stitches: number;
  readonly mm: number;
}

export interface MeasuredYarn {
  readonly stitches: number;
  readonly stitchesMm: number;
  readonly floats: readonly MeasuredFloat[];
  readonly carries: readonly MeasuredCarry[];
}

/** The longest part of a float that lies loose, in stitches: between its ends and the needles that hold it. */
export function looseOf({ first, last, liftedOn }: Pick<MeasuredFloat, 'first' | 'last' | 'liftedOn'>): number {
  const holds = [first - 1, ...liftedOn, last + 1];
  return Math.max(...holds.slice(1).map((hold, index) => hold - (holds[index] as number) - 1));
}

/** Left at each end to darn in (common practice, no source: some 15 cm). */
export const END_MM = 150;

/**
 * Yarn in one stitch of plain knitting. Munden, J. Text. Inst. 50 (1959) T448:
 * stitches in a cm² are ks / l², l in cm; ks = 19.0 for wool, dry relaxed
 * (from memory, as in handbooks after Munden).
 */
export function loopMm({ stitches, rows }: GaugeOfRow): number {
  const inSquareCm = (stitches * rows) / 100;
  return Math.sqrt(19 / inSquareCm) * 10;
}

export function stitchMm({ stitches }: GaugeOfRow): number {
  return 100 / stitches;
}

/** Rows above `from` up to `to`. */
export function heightMm(gauging: Gauging, from: number, to: number): number {
  let mm = 0;
  for (let row = from + 1; row <= to; row++) mm += 100 / gauging(row).rows;
  return mm;
}

/** Sideways, by the wider of the stitches at its two ends, then up. */
export function wayMm(gauging: Gauging, stitches: number, from: number, to: number): number {
  const widest = Math.max(stitchMm(gauging(from)), stitchMm(gauging(to)));
  return stitches * widest + heightMm(gauging, from, to);
}

/**
 * A length of yarn. One that `turns` goes from a row to the next one at the
 * edge, where the way is no more than the edge stitch takes: main does, which
 * is at home on every row.
 */
export function measureYarn({ way }: Pick<StrandLaid, 'way'>, gauging: Gauging, turns: boolean): MeasuredYarn {
  const floats: MeasuredFloat[] = [];
  const carries: MeasuredCarry[] = [];
  let [stitches, stitchesMm] = [0, 0];
  let behind: Step[] = [];
  const endFloat = (): void => {
    if (behind.length > 0) floats.push(floatOf(behind, gauging));
    behind = [];
  };
  way.forEach((step, index) => {
    const before = way[index - 1];
    if (before && before.row !== step.row) {
      endFloat();
      const isTurn = turns && step.row === before.row + 1;
      if (!isTurn) carries.push(carryOf(before, step, gauging));
    }
    if (step.does === 'knit') {
      endFloat();
      stitches++;
      stitchesMm += loopMm(gauging(step.row));
    } else behind.push(step);
  });
  endFloat();
  return { stitches, stitchesMm, floats, carries };
}

function floatOf(behind: readonly Step[], gauging: Gauging): MeasuredFloat {
  const needles = behind.map(({ needle }) => needle);
  const { row } = behind[0] as Step;
  return {
    row,
    first: Math.min(...needles),
    last: Math.max(...needles),
    stitches: needles.length,
    mm: needles.length * stitchMm(gauging(row)),
    liftedOn: behind
      .filter(({ does }) => does === 'lifted')
      .map(({ needle }) => needle)
      .sort((a, b) => a - b),
  };
}

function carryOf(from: Step, to: Step, gauging: Gauging): MeasuredCarry {
  const stitches = Math.abs(to.needle - from.needle);
  return {
    row: from.row,
    toRow: to.row,
    first: Math.min(from.needle, to.needle),
    last: Math.max(from.needle, to.needle),
    stitches,
    mm: wayMm(gauging, stitches, from.row, to.row),
  };
}

/**
 * A wrapping strand from end to end: down the wraps of one edge, over the fold
 * to the lowest of the other one and up, if it wraps both; a stitch's yarn for
 * each wrap.
 */
export function wrappingMm({ wraps }: Pick<WrappingStrand, 'wraps'>, gauging: Gauging): number {
  const up = (edge: 'left' | 'right') => wraps.filter((wrap) => wrap.edge === edge).sort((a, b) => a.row - b.row);
  const inOrder = [...up('left').reverse(), ...up('right')];
  return inOrder.reduce((mm, wrap, index) => {
    const before = inOrder[index - 1];
    const [low, high] = before && before.row > wrap.row ? [wrap, before] : [before, wrap];
    const from = low && high ? wayMm(gauging, Math.abs(high.needle - low.needle), low.row, high.row) : 0;
    return mm + from + loopMm(gauging(wrap.row));
  }, 2 * END_MM);
}

/** A float or a way sideways is over the limit in stitches or in mm, on any of the rows that it lies on. */
export function isOverLimit(
  stitches: number,
  limit: { readonly stitches: number; readonly mm: number | null },
  gauges: readonly GaugeOfRow[],
): boolean {
  // 7 stitches of 28 in 10 cm are 25 mm and not a hair more.
  return (
    stitches > limit.stitches ||
    gauges.some((gauge) => limit.mm !== null && stitches * 100 > limit.mm * gauge.stitches + 1e-9)
  );
}

/** As far up a yarn is carried at most; one that goes on further up is cut and joined again (common practice, no source). */
export function isNearUp(gauging: Gauging, from: number, to: number): boolean {
  return to - from <= 8 && heightMm(gauging, from, to) <= 25 + 1e-9;
}
