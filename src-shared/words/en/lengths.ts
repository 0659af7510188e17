/** Lengths of the fabric, in the unit that the knitter reads. */
import {
  gaugeLengthMm,
  gaugePer,
  LENGTH_DIGITS,
  toUnit,
  toWeight,
  toYarnUnit,
  type LengthUnit,
} from '../../length/index.ts';
import type { Gauge } from '../../piece/index.ts';
import { numbers as n } from './numbers.ts';

/** `34.3`, without its unit. */
function figure(mm: number, unit: LengthUnit): string {
  return n.plain(toUnit(mm, unit), LENGTH_DIGITS[unit]);
}

/** What yarn is measured and weighed in beside each unit of lengths. */
const YARN: { readonly [Unit in LengthUnit]: string } = { cm: 'm', in: 'yd' };
const WEIGHT: { readonly [Unit in LengthUnit]: string } = { cm: 'g', in: 'oz' };
const SHORT: { readonly [Unit in LengthUnit]: string } = { cm: 'mm', in: 'in' };

export const lengths = {
  figure,
  /** What a gauge is counted in: `10 cm`, `4 in`. */
  gaugeLength: (unit: LengthUnit): string => `${n.plain(toUnit(gaugeLengthMm(unit), unit))} ${unit}`,
  /** `28 stitches and 40 rows`, in 10 cm or 4 in. */
  gaugeCounts: ({ stitches, rows }: Gauge, unit: LengthUnit): string =>
    `${n.stitches(Number(n.plain(gaugePer(stitches, unit), 1)))} and ${n.rows(Number(n.plain(gaugePer(rows, unit), 1)))}`,
  /** Floats and the like: `86 mm`, `3.4 in`. */
  short: (mm: number, unit: LengthUnit): string =>
    unit === 'cm' ? `${n.plain(mm, 0)} ${SHORT.cm}` : `${n.plain(toUnit(mm, unit), 1)} ${SHORT.in}`,
  /** Yarn: `155 m`, `169.5 yd`. */
  yarn: (mm: number, unit: LengthUnit): string => `${n.plain(toYarnUnit(mm, unit))} ${YARN[unit]}`,
  /** `43 g`, `1.5 oz`. */
  weight: (grams: number, unit: LengthUnit): string =>
    `${n.plain(toWeight(grams, unit), unit === 'cm' ? 0 : 1)} ${WEIGHT[unit]}`,
  /** Cut to, kept for or left: whole, never short. `65 cm`, `26 in`. */
  cut: (mm: number, unit: LengthUnit): string => `${Math.ceil(toUnit(mm, unit))} ${unit}`,
  /** `34.3 cm`, `13.5 in`. */
  length: (mm: number, unit: LengthUnit): string => `${figure(mm, unit)} ${unit}`,
  /** `34.3 × 35 cm`. */
  across: (widthMm: number, heightMm: number, unit: LengthUnit): string =>
    `${figure(widthMm, unit)} × ${figure(heightMm, unit)} ${unit}`,
  /** The same, kept on one line. */
  acrossUnbroken: (widthMm: number, heightMm: number, unit: LengthUnit): string =>
    `${figure(widthMm, unit)}\u00a0×\u00a0${figure(heightMm, unit)}\u00a0${unit}`,
};
