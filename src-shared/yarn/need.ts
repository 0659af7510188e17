/** How much of each yarn a piece takes. */
import { stitchWidthMm, type Gauge } from '../piece/index.ts';
import type { Yarn } from '../project/index.ts';
import type { StrandId } from '../strands/index.ts';
import { middleOf, type Finishing, type Span } from './finishing.ts';
import type { Loops } from './loops.ts';
import { gramsOf, texOf } from './tex.ts';
import type { BallUse, YarnNeed, YarnUse } from './types.ts';

/** Left at each end of a strand to darn in (common practice, no source). */
export const TAIL_MM = 150;

/** A strand and what it does on the whole piece. */
export interface StrandTotal {
  readonly strand: StrandId;
  /** What it knits on the rows of each gauge. */
  readonly byGauge: readonly {
    readonly gauge: Gauge;
    readonly stitches: number;
    /** Stitches floated over. */
    readonly floated: number;
  }[];
  /** Length of all its carries, mm. */
  readonly carriesMm: number;
  /** How often it is cut and joined again. */
  readonly cuts: number;
  /** The first and last row that it is knitted on; 0 where there is none. */
  readonly firstRow: number;
  readonly lastRow: number;
}

export interface NeedSettings {
  readonly yarns: readonly Yarn[];
  readonly loops: Loops;
  readonly finishing: Finishing;
  /** Share to add when winding off. */
  readonly margin: number;
}

/**
 * Adds up strands by yarn: main first, then each contrast by palette index.
 * Stitches and floats are as long as the gauge of their rows makes them.
 */
export function yarnNeed(totals: readonly StrandTotal[], settings: NeedSettings): YarnNeed {
  const { loops, finishing, margin } = settings;
  const byYarn = new Map<number, StrandTotal[]>();
  for (const total of totals) {
    const known = byYarn.get(total.strand.yarn);
    if (known) known.push(total);
    else byYarn.set(total.strand.yarn, [total]);
  }
  const uses = [...byYarn.values()].map((strands) => useOf(strands, settings));
  uses.sort((a, b) => Number(a.role === 'contrast') - Number(b.role === 'contrast') || a.yarn - b.yarn);
  const [main] = totals;
  const lengths = main?.byGauge.map(({ gauge }) => ({ gauge, mm: loops.mmOf(gauge) })) ?? [];
  return { loops: lengths, from: loops.from, share: loops.share, finishing, uses, margin };
}

function useOf(strands: readonly StrandTotal[], { yarns, loops, finishing }: NeedSettings): YarnUse {
  const { yarn, role } = (strands[0] as StrandTotal).strand;
  const { castOff, sewing } = finishing;
  const isMain = role === 'main';
  const balls = strands.map((strand): BallUse => {
    const { group } = strand.strand;
    const stitches = sum(strand.byGauge, (part) => part.stitches);
    const stitchesMm = sum(strand.byGauge, (part) => part.stitches * loops.mmOf(part.gauge));
    const floatsMm = sum(strand.byGauge, (part) => part.floated * stitchWidthMm(part.gauge));
    const { carriesMm } = strand;
    const tailsMm = (strand.cuts + 1) * 2 * TAIL_MM;
    const castOffMm = isMain ? middleOf(castOff?.mm) : 0;
    const sewingMm = isMain ? middleOf(sewing?.mm) : 0;
    const totalMm = stitchesMm + floatsMm + carriesMm + tailsMm + castOffMm + sewingMm;
    const { firstRow, lastRow } = strand;
    return {
      ...{ group, firstRow, lastRow, stitches },
      ...{ stitchesMm, floatsMm, carriesMm, tailsMm, castOffMm, sewingMm, totalMm },
    };
  });
  const all = (of: keyof Omit<BallUse, 'group'>): number => sum(balls, (ball) => ball[of]);
  const totalMm = all('totalMm');
  const stitchesMm = all('stitchesMm');
  const spread = stitchesMm * loops.share + (isMain ? halfOf(castOff?.mm) + halfOf(sewing?.mm) : 0);
  return {
    yarn,
    role,
    balls,
    stitches: all('stitches'),
    stitchesMm,
    floatsMm: all('floatsMm'),
    carriesMm: all('carriesMm'),
    tailsMm: all('tailsMm'),
    castOffMm: all('castOffMm'),
    sewingMm: all('sewingMm'),
    totalMm,
    grams: gramsOf(totalMm, texOf(yarns[yarn])),
    leastMm: totalMm - spread,
    mostMm: totalMm + spread,
  };
}

/** By how much the middle of a span may be off. */
function halfOf(span: Span | undefined): number {
  return span ? (span.most - span.least) / 2 : 0;
}

function sum<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((total, item) => total + value(item), 0);
}
