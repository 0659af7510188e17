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
