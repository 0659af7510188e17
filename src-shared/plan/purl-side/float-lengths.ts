/** How many floats there are of which length, by yarn, against the limit. */
import { sectionAt, type FloatLimit } from '../../piece/index.ts';
import { longestWithin, looseStitches, type Float } from '../../strands/index.ts';
import type { YarnIndex } from '../running-order/types.ts';
import type { Plan, PlanRow } from '../types.ts';

/** Floats of one yarn in one bar. */
export interface FloatCount {
  readonly yarn: YarnIndex;
  /** In the open. */
  readonly open: number;
  /** Inside a folded hem or a lining. */
  readonly covered: number;
}

/** A bar of the histogram: floats of which `from` … `to` stitches lie loose, in the longest part where they are held. */
export interface LengthBar {
  readonly from: number;
  readonly to: number;
  /** In the order of the palette; yarns without a float of these lengths are missing. */
  readonly counts: readonly FloatCount[];
  readonly open: number;
  readonly covered: number;
}

export interface FloatLengths {
  /** From the shortest up, without a gap; empty where nothing floats. */
  readonly bars: readonly LengthBar[];
  /** The longest floats within the limit, in stitches: one for each gauge of the piece that differs in it, ascending. */
  readonly limits: readonly number[];
  /** By yarn, in the order of the palette. */
  readonly yarns: readonly (FloatCount & { readonly longest: number })[];
  /** Over the limit of their rows, in the open and covered. */
  readonly over: { readonly open: number; readonly covered: number };
  /** Hooked or latched up, so that they count by what lies loose of them. */
  readonly held: number;
}

/** More bars than this are not read at a glance. */
const MOST_BARS = 16;
/** Up to a limit of so many stitches each length within it has a bar of its own. */
const MOST_SINGLE = 8;
/** Bars over the limit are so many stitches wide. */
const WIDTHS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** The floats of a piece by what lies loose of them, in stitches. Linear in them. */
export function floatLengthsOf(plan: Pick<Plan, 'rows' | 'sections' | 'gauges'>, limit: FloatLimit): FloatLengths {
  /** By length, then by yarn. */
  const found: { open: number; covered: number }[][] = [];
  const longest: number[] = [];
  const over = { open: 0, covered: 0 };
  let held = 0;
  for (const { row, floats } of plan.rows) {
    if (floats.length === 0) continue;
    const where = sectionAt(plan.sections, row).isLined ? 'covered' : 'open';
    for (const float of floats) {
      const { strand, isOver } = float;
      const stitches = looseStitches(float);
      const count = ((found[stitches] ??= [])[strand.yarn] ??= { open: 0, covered: 0 });
      count[where]++;
      longest[strand.yarn] = Math.max(longest[strand.yarn] ?? 0, stitches);
      if (isOver) over[where]++;
      if (float.held.length > 0) held++;
    }
  }
  const limits = [...new Set(plan.gauges.map(({ gauge }) => longestWithin(limit, gauge)))].sort((a, b) => a - b);
  const bars = barsUpTo(found.length - 1, limits).map(([from, to]): LengthBar => {
    const counts = countsOf(found.slice(from, to + 1));
    return { from, to, counts, open: sumOf(counts, 'open'), covered: sumOf(counts, 'covered') };
  });
  const yarns = countsOf(found).map((count) => ({ ...count, longest: longest[count.yarn] as number }));
  return { bars, limits, yarns, over, held };
}

/** The lengths of each bar up to `most`: as narrow as they go, and none reaches over a limit. */
function barsUpTo(most: number, limits: readonly number[]): (readonly [from: number, to: number])[] {
  const single = (limits[0] ?? 0) <= MOST_SINGLE ? (limits[0] ?? 0) : 0;
  let bars: (readonly [number, number])[] = [];
  for (const width of WIDTHS) {
    bars = [];
    for (let from = 1; from <= most;) {
      const next = limits.find((limit) => limit >= from) ?? Infinity;
      const to = Math.min(from + (from <= single ? 1 : width) - 1, next, most);
      bars.push([from, to]);
      from = to + 1;
    }
    if (bars.length <= MOST_BARS) break;
  }
  return bars;
}

function countsOf(
  lengths: readonly (readonly ({ open: number; covered: number } | undefined)[] | undefined)[],
): FloatCount[] {
  const byYarn: { yarn: number; open: number; covered: number }[] = [];
  for (const length of lengths) {
    length?.forEach((count, yarn) => {
      if (!count) return;
      const sum = (byYarn[yarn] ??= { yarn, open: 0, covered: 0 });
      sum.open += count.open;
      sum.covered += count.covered;
    });
  }
  return byYarn.filter((count) => count !== undefined);
}

function sumOf(counts: readonly FloatCount[], of: 'open' | 'covered'): number {
  return counts.reduce((sum, count) => sum + count[of], 0);
}

/** A float and the row it lies on. */
export interface FloatAt {
  readonly row: number;
  readonly float: Float;
}

/** The next float of which `from` … `to` stitches lie loose after a needle of a row, up the piece and then from its foot again; null where there is none. */
export function nextFloat(
  rows: readonly PlanRow[],
  { from, to }: Pick<LengthBar, 'from' | 'to'>,
  after: { readonly row: number; readonly needle: number },
): FloatAt | null {
  const isMeant = (float: Float): boolean => {
    const stitches = looseStitches(float);
    return stitches >= from && stitches <= to;
  };
  for (let step = 0; step <= rows.length; step++) {
    const { row, floats } = rows[(after.row - 1 + step) % rows.length] as PlanRow;
    const there = floats
      .filter((float) => isMeant(float) && (step > 0 || float.first > after.needle))
      .sort((one, other) => one.first - other.first)[0];
    if (there) return { row, float: there };
  }
  return null;
}
