/** Lengths of the fabric, in the unit that the knitter reads. */
import { LENGTH_DIGITS, toUnit, type LengthUnit } from '../../length/index.ts';
import { numbers as n } from './numbers.ts';

/** `34.3`, without its unit. */
function figure(mm: number, unit: LengthUnit): string {
  return n.plain(toUnit(mm, unit), LENGTH_DIGITS[unit]);
}

export const lengths = {
  figure,
  /** `34.3 cm`, `13.5 in`. */
  length: (mm: number, unit: LengthUnit): string => `${figure(mm, unit)} ${unit}`,
  /** `34.3 × 35 cm`. */
  across: (widthMm: number, heightMm: number, unit: LengthUnit): string =>
    `${figure(widthMm, unit)} × ${figure(heightMm, unit)} ${unit}`,
  /** The same, kept on one line. */
  acrossUnbroken: (widthMm: number, heightMm: number, unit: LengthUnit): string =>
    `${figure(widthMm, unit)}\u00a0×\u00a0${figure(heightMm, unit)}\u00a0${unit}`,
};
