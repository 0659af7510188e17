/** How much of each yarn a piece takes. */
import { stitchWidthMm, type Gauge } from '../piece/index.ts';
import type { Yarn } from '../project/index.ts';
import type { Carry, StrandId } from '../strands/index.ts';
import { loopLengthMm, type Relaxation } from './munden.ts';
import { gramsOf } from './tex.ts';
import type { BallUse, YarnNeed, YarnUse } from './types.ts';

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
  /** How often it is cut and joined again. */
  readonly cuts: number;
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
  const balls = strands.map((strand): BallUse => {
    const { group } = strand.strand;
    const stitches = sum(strand.byGauge, (part) => part.stitches);
    const stitchesMm = sum(strand.byGauge, (part) => part.stitches * loopLengthMm(part.gauge, state));
    const floatsMm = sum(strand.byGauge, (part) => part.floated * stitchWidthMm(part.gauge));
    const carriesMm = sum(strand.carries, (carry) => carry.mm);
    // Main's ends at the cast-on and at the end of the piece are counted there; where it is cut it has two more.
    const ends = strand.cuts + Number(role === 'contrast');
    const tailsMm = ends * 2 * TAIL_MM;
    const totalMm = stitchesMm + floatsMm + carriesMm + tailsMm;
    return { group, stitches, stitchesMm, floatsMm, carriesMm, tailsMm, totalMm };
  });
  const totalMm = sum(balls, (ball) => ball.totalMm);
  return {
    yarn,
    role,
    balls,
    stitches: sum(balls, (ball) => ball.stitches),
    stitchesMm: sum(balls, (ball) => ball.stitchesMm),
    floatsMm: sum(balls, (ball) => ball.floatsMm),
    carriesMm: sum(balls, (ball) => ball.carriesMm),
    tailsMm: sum(balls, (ball) => ball.tailsMm),
    totalMm,
    grams: gramsOf(totalMm, yarns[yarn]?.tex ?? null),
  };
}

function sum<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((total, item) => total + value(item), 0);
}
