/** Lengths as the knitter reads and writes them. */

export type LengthUnit = 'cm' | 'in';

/** By definition an inch is 25.4 mm. */
const MM: { readonly [Unit in LengthUnit]: number } = { cm: 10, in: 25.4 };

export function toUnit(mm: number, unit: LengthUnit): number {
  return mm / MM[unit];
}

export function toMm(length: number, unit: LengthUnit): number {
  return length * MM[unit];
}

/** Decimals worth showing: a millimetre, or a hundredth of an inch. */
export const LENGTH_DIGITS: { readonly [Unit in LengthUnit]: number } = { cm: 1, in: 2 };

/** A gauge is counted in 10 cm, or in 4 in; by files always in 10 cm. */
export function gaugeLengthMm(unit: LengthUnit): number {
  return unit === 'cm' ? 100 : 4 * MM.in;
}

/** Stitches or rows in 10 cm as those in the length that goes with the unit. */
export function gaugePer(inTenCm: number, unit: LengthUnit): number {
  return (inTenCm * gaugeLengthMm(unit)) / 100;
}

/** The other way round. */
export function gaugeFrom(count: number, unit: LengthUnit): number {
  return (count * 100) / gaugeLengthMm(unit);
}

/** What fields for a gauge take: bounds in 10 cm as those in the other length, rounded inwards to a hundredth. */
export function gaugeRange(
  { least, most }: { readonly least: number; readonly most: number },
  unit: LengthUnit,
): { readonly least: number; readonly most: number } {
  const hundredths = (inTenCm: number): number => Number((gaugePer(inTenCm, unit) * 100).toFixed(6));
  return { least: Math.ceil(hundredths(least)) / 100, most: Math.floor(hundredths(most)) / 100 };
}

/** By definition a yard is 36 in, and an ounce (avoirdupois) 28.349523125 g. */
const YARN_MM: { readonly [Unit in LengthUnit]: number } = { cm: 1000, in: 36 * MM.in };
const GRAMS: { readonly [Unit in LengthUnit]: number } = { cm: 1, in: 28.349523125 };

/** Yarn in metres, or in yards. */
export function toYarnUnit(mm: number, unit: LengthUnit): number {
  return mm / YARN_MM[unit];
}

/** In grams, or in ounces. */
export function toWeight(grams: number, unit: LengthUnit): number {
  return grams / GRAMS[unit];
}
