/**
 * Yarn counts as tex: grams in 1000 m (ISO 1144).
 *
 * Counts of weight for length grow with thickness (tex, denier), counts of
 * length for weight with fineness (Nm, Ne, worsted). A plied yarn is written
 * with its plies, Nm 2/30 being two plies of Nm 30.
 */

/** Metric count: metres in a gram. */
export function texFromNm(count: number, plies = 1): number {
  return (plies * 1000) / count;
}

/** English cotton count: hanks of 840 yards in a pound. */
export function texFromNe(count: number, plies = 1): number {
  return (plies * 590.5) / count;
}

/** Worsted count: hanks of 560 yards in a pound. */
export function texFromWorsted(count: number, plies = 1): number {
  return (plies * 885.8) / count;
}

/** Denier: grams in 9000 m. */
export function texFromDenier(denier: number): number {
  return denier / 9;
}

/** What most balls of yarn that are sold weigh (common practice, no source). */
export const BALL_GRAMS = 50;

/** As on a ball band: `grams` in `metres`. */
export function texFromBall(grams: number, metres: number): number {
  return (grams * 1000) / metres;
}

/** Metres in a kilogram. */
export function texFromMetresPerKg(metres: number): number {
  return 1e6 / metres;
}

/** Grams of a length in mm, or null where the tex is not known. */
export function gramsOf(mm: number, tex: number | null): number | null {
  return tex === null ? null : (mm / 1e6) * tex;
}
