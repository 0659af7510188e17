/** How much of each yarn a piece takes. */
import { rowHeightMm, stitchWidthMm, type Gauge } from '../piece/index.ts';
import type { Yarn } from '../project/project.ts';
import type { Carry, StrandId } from '../strands/types.ts';
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
  readonly stitches: number;
  /** Stitches floated over. */
  readonly floated: number;
  readonly carries: readonly Carry[];
}

/**
 * The way between two needles and rows: sideways and then up. A little more
 * than the straight line, so that a strand cut to it is never short.
 */
export function wayMm(stitches: number, rows: number, gauge: Gauge): number {
  return stitches * stitchWidthMm(gauge) + rows * rowHeightMm(gauge);
}

/** Adds up strands by yarn: main first, then each contrast by palette index. */
export function yarnNeed(
  totals: readonly StrandTotal[],
  yarns: readonly Yarn[],
  gauge: Gauge,
  state: Relaxation = 'dry-relaxed',
): YarnNeed {
  const loopMm = loopLengthMm(gauge, state);
  const byYarn = new Map<number, StrandTotal[]>();
  for (const total of totals) {
    const known = byYarn.get(total.strand.yarn);
    if (known) known.push(total);
    else byYarn.set(total.strand.yarn, [total]);
  }
  const uses = [...byYarn.values()].map((strands) => useOf(strands, yarns, gauge, loopMm));
  uses.sort((a, b) => Number(a.role === 'contrast') - Number(b.role === 'contrast') || a.yarn - b.yarn);
  return { loopMm, uses, margin: WINDING_MARGIN };
}

function useOf(strands: readonly StrandTotal[], yarns: readonly Yarn[], gauge: Gauge, loopMm: number): YarnUse {
  const { yarn, role } = (strands[0] as StrandTotal).strand;
  const stitches = sum(strands, (total) => total.stitches);
  const stitchesMm = stitches * loopMm;
  const floatsMm = sum(strands, (total) => total.floated) * stitchWidthMm(gauge);
  const carriesMm = sum(strands, (total) => sum(total.carries, (carry) => wayMm(carry.stitches, carry.rows, gauge)));
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
