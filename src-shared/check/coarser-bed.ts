/**
 * The same width on fewer stitches: a looser fabric on the bed that is there,
 * or a bed with needles further apart.
 *
 * To use every other needle is no way out: it halves the needles, and the
 * stitches come out twice as wide, so the fabric is as much wider than the bed
 * as before. Another bed helps only in so far as it is longer for its pitch.
 */
import type { Gauge } from '../piece/index.ts';
import type { Bed } from '../bed/index.ts';

/**
 * Pitches are common practice; needles of the fine, the standard and the bulky
 * bed are from memory, those of the mid bed what a standard bed's length holds.
 */
const USUAL_BEDS = [
  { pitchMm: 3.6, needles: 250 },
  { pitchMm: 4.5, needles: 200 },
  { pitchMm: 6.5, needles: Math.floor((200 * 4.5) / 6.5) },
  { pitchMm: 9, needles: 110 },
] as const;

/** Fewer stitches that come out as wide. */
export interface FewerStitches {
  readonly stitches: number;
  /** Stitches in 10 cm at which they do. */
  readonly inTenCm: number;
}

/**
 * The most stitches in 10 cm, in tenths, at which the width that `stitches`
 * have at the gauge now takes no more than `needles`.
 */
export function looserFabric(stitches: number, gauge: Gauge, needles: number): FewerStitches {
  const inTenCm = Math.floor((10 * gauge.stitches * needles) / stitches) / 10;
  return { stitches: Math.round((stitches * inTenCm) / gauge.stitches), inTenCm };
}

export interface CoarserBed extends FewerStitches {
  readonly pitchMm: number;
  readonly needles: number;
}

/**
 * The finest of the usual beds with needles further apart that holds the width
 * of `stitches`, at the gauge usual there: stitches grow with the pitch (common
 * practice, no source). Null if none does.
 */
export function coarserBed(stitches: number, gauge: Gauge, bed: Bed): CoarserBed | null {
  for (const { pitchMm, needles } of USUAL_BEDS) {
    if (pitchMm <= bed.pitchMm) continue;
    const share = bed.pitchMm / pitchMm;
    const as = Math.round(stitches * share);
    if (as <= needles) return { pitchMm, needles, stitches: as, inTenCm: gauge.stitches * share };
  }
  return null;
}
