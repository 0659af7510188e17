/** A stitch by slot and row (1-based). */
export interface StitchSpot {
  readonly needle: number;
  readonly row: number;
}
