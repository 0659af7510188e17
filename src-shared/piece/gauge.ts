/** What a gauge says in lengths. */
import { problemError } from '../problem/index.ts';
import { GAUGE_BOUNDS, type Gauge } from './model.ts';

/**
 * Stitches (or rows) in 10 cm where `count` of them measure `mm` on a swatch;
 * exact, as the swatch is only as large as it is. Throws `gauge-absurd`.
 */
export function fromSwatch(of: keyof Gauge, count: number, mm: number): number {
  const inTenCm = (count * 100) / mm;
  const { least, most } = GAUGE_BOUNDS[of];
  if (!(inTenCm >= least && inTenCm <= most))
    throw problemError('gauge-absurd', { of, count, mm, inTenCm, least, most });
  return inTenCm;
}

/**
 * The whole number of stitches or rows, at `inTenCm` of them in 10 cm, that
 * comes nearest to `mm`: at least 1; halfway between two, the larger.
 */
export function nearestCount(mm: number, inTenCm: number): number {
  return Math.max(1, Math.round((mm * inTenCm) / 100));
}

/** Width of one stitch in mm. */
export function stitchWidthMm(gauge: Gauge): number {
  return 100 / gauge.stitches;
}

/** Height of one row in mm. */
export function rowHeightMm(gauge: Gauge): number {
  return 100 / gauge.rows;
}

/** How many times as wide as tall a stitch is: 40 rows on 28 stitches is 1.43. */
export function cellAspect(gauge: Gauge): number {
  return gauge.rows / gauge.stitches;
}
