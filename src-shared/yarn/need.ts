/** How much of each yarn a piece takes. */
import { stitchWidthMm, type Gauge } from '../piece/index.ts';
import type { Yarn } from '../project/index.ts';
import type { Carry, StrandId } from '../strands/index.ts';
import { loopLengthMm, type Relaxation } from './munden.ts';
import { gramsOf } from './tex.ts';
import type { YarnNeed, YarnUse } from './types.ts';

/** Left at each end of a strand to darn in. */
export const TAIL_MM = 150;

/** Share to add when winding off. */
export const WINDING_MARGIN = 0.1;

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
  readonly carries: readonly Carry[];
}

/**
 * Adds up strands by yarn: main first, then each contrast by palette index.
 * Stitches and floats are as long as the gauge of their rows makes them.
 */
export function yarnNeed(
  totals: readonly StrandTotal[],
  yarns: readonly Yarn[],
  state: Relaxation = 'dry-relaxed',
): YarnNeed {
  const byYarn = new Map<number, StrandTotal[]>();
  for (const total of totals) {
    const known = byYarn.get(total.strand.yarn);
    if (known) known.push(total);
    else byYarn.set(total.strand.yarn, [total]);
  }
  const uses = [...byYarn.values()].map((strands) => useOf(strands, yarns, state));
  uses.sort((a, b) => Number(a.role === 'contrast') - Number(b.role === 'contrast') || a.yarn - b.yarn);
  const [main] = totals;
  const loops = main?.byGauge.map(({ gauge }) => ({ gauge, mm: loopLengthMm(gauge, state) })) ?? [];
  return { loops, uses, margin: WINDING_MARGIN };
}

function useOf(strands: readonly StrandTotal[], yarns: readonly Yarn[], state: Relaxation): YarnUse {
  const { yarn, role } = (strands[0] as StrandTotal).strand;
  const parts = strands.flatMap(({ byGauge }) => byGauge);
  const stitches = sum(parts, (part) => part.stitches);
  const stitchesMm = sum(parts, (part) => part.stitches * loopLengthMm(part.gauge, state));
  const floatsMm = sum(parts, (part) => part.floated * stitchWidthMm(part.gauge));
  const carriesMm = sum(strands, (total) => sum(total.carries, (carry) => carry.mm));
  const tailsMm = role === 'main' ? 0 : strands.length * 2 * TAIL_MM;
  const totalMm = stitchesMm + floatsMm + carriesMm + tailsMm;
  return {
    yarn,
    role,
    balls: strands.length,
    stitches,
    stitchesMm,
    floatsMm,
    carriesMm,
    tailsMm,
    totalMm,
    grams: gramsOf(totalMm, yarns[yarn]?.tex ?? null),
  };
}

function sum<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((total, item) => total + value(item), 0);
}
