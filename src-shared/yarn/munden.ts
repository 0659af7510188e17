/**
 * Length of yarn in a stitch of plain knitting, from its gauge.
 *
 * Munden's relations (J. Text. Inst. 50, 1959, T448): with l the loop length
 * in cm, courses/cm = kc / l, wales/cm = kw / l, and stitches/cm² = ks / l².
 */
import type { Gauge } from '../piece/index.ts';

/** How far a fabric has come to rest after knitting. */
export type Relaxation = 'dry-relaxed' | 'wet-relaxed' | 'fully-relaxed';

export interface MundenConstants {
  readonly kc: number;
  readonly kw: number;
  readonly ks: number;
}

/** Values for wool as given in handbooks after Munden; from memory, the last pair also in GATE TF 2015. */
export const MUNDEN: Readonly<Record<Relaxation, MundenConstants>> = {
  'dry-relaxed': { kc: 5.0, kw: 3.8, ks: 19.0 },
  'wet-relaxed': { kc: 5.3, kw: 4.1, ks: 21.6 },
  'fully-relaxed': { kc: 5.5, kw: 4.2, ks: 23.1 },
};

/** Stitches in a square centimetre. */
export function stitchesPerCm2(gauge: Gauge): number {
  return (gauge.stitches / 10) * (gauge.rows / 10);
}

/** Loop length in mm: l = √(ks / S), S in stitches/cm². */
export function loopLengthMm(gauge: Gauge, state: Relaxation = 'dry-relaxed'): number {
  return loopLengthOfKsMm(gauge, MUNDEN[state].ks);
}

/** The same for a fabric of which the constant ks is known. */
export function loopLengthOfKsMm(gauge: Gauge, ks: number): number {
  return 10 * Math.sqrt(ks / stitchesPerCm2(gauge));
}

/** The density that a loop length in mm gives: courses and wales in a cm, stitches in a cm². */
export function densityOf(
  loopMm: number,
  state: Relaxation = 'dry-relaxed',
): { readonly courses: number; readonly wales: number; readonly stitches: number } {
  const { kc, kw, ks } = MUNDEN[state];
  const cm = loopMm / 10;
  return { courses: kc / cm, wales: kw / cm, stitches: ks / (cm * cm) };
}

/** Mass of plain fabric in g/m²: S (per cm²) × l (mm) × tex / 100. */
export function massPerM2(stitchesPerSquareCm: number, loopMm: number, tex: number): number {
  return (stitchesPerSquareCm * loopMm * tex) / 100;
}
