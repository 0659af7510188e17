/** Stitches and rows in 10 cm, and the lengths that follow. */
export interface Gauge {
  /** Stitches in 10 cm across. */
  readonly stitches: number;
  /** Rows in 10 cm up. */
  readonly rows: number;
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
