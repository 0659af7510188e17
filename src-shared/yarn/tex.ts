/**
 * Yarn counts as tex: grams in 1000 m (ISO 1144).
 *
 * Counts of weight for length grow with thickness (tex, denier), counts of
 * length for weight with fineness (Nm, Ne, worsted). A plied yarn is written
 * with its plies, Nm 2/30 being two plies of Nm 30.
 */
import { BALL_BOUNDS, COUNT_BOUNDS, type NumberedSystem, type Yarn, type YarnCount } from '../project/index.ts';

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
export function texFromDenier(denier: number, plies = 1): number {
  return (plies * denier) / 9;
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

const FROM: { readonly [System in NumberedSystem]: (value: number, plies: number) => number } = {
  tex: (value, plies) => plies * value,
  metric: texFromNm,
  cotton: texFromNe,
  worsted: texFromWorsted,
  denier: texFromDenier,
};

/** The tex of a count in whichever system. */
export function texOfCount(count: YarnCount): number {
  return count.system === 'ball'
    ? texFromBall(count.grams, count.metres)
    : FROM[count.system](count.value, count.plies);
}

/** The count in another system of a yarn of so many tex, as one ply, or by a ball of `ballGrams`; as near as that system goes. */
export function countIn(system: YarnCount['system'], tex: number, ballGrams: number): YarnCount {
  if (system === 'ball') return { system, metres: within(BALL_BOUNDS, (ballGrams * 1000) / tex), grams: ballGrams };
  // Tex and denier grow with thickness, and the others with fineness: either way it is its own inverse but for a factor.
  const one = FROM[system](1, 1);
  const value = system === 'tex' || system === 'denier' ? tex / one : one / tex;
  return { system, value: within(COUNT_BOUNDS[system], value), plies: 1 };
}

function within({ least, most }: { readonly least: number; readonly most: number }, value: number): number {
  return Math.min(most, Math.max(least, value));
}

/** The tex of a yarn, or null where its count is not known. */
export function texOf(yarn: Pick<Yarn, 'count'> | undefined): number | null {
  return yarn?.count ? texOfCount(yarn.count) : null;
}

/** What a ball of it weighs: as its label says, else as most do. */
export function ballGramsOf(yarn: Pick<Yarn, 'count'> | undefined): number {
  return yarn?.count?.system === 'ball' ? yarn.count.grams : BALL_GRAMS;
}

/** Grams of a length in mm, or null where the tex is not known. */
export function gramsOf(mm: number, tex: number | null): number | null {
  return tex === null ? null : (mm / 1e6) * tex;
}

/** The length in mm that weighs so many grams, or null where the tex is not known. */
export function mmOf(grams: number, tex: number | null): number | null {
  return tex === null ? null : (grams / tex) * 1e6;
}

/** Grams that are there of a yarn: null where nobody said, or balls are said and no label says what one weighs. */
export function gramsOnHand({ count, onHand }: Pick<Yarn, 'count' | 'onHand'>): number | null {
  if (onHand === null) return null;
  if (onHand.in === 'grams') return onHand.amount;
  return count?.system === 'ball' ? onHand.amount * count.grams : null;
}
