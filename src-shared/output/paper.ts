/** Sizes of paper, and the unit of print. */
import type { paperSizes } from '../host/index.ts';

export type PaperSize = (typeof paperSizes)[number];

export interface PaperMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 in (ANSI/ASME Y14.1). */
export const PAPER: Readonly<Record<PaperSize, PaperMm>> = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 8.5 * 25.4, heightMm: 11 * 25.4 },
};

/** One point, 1/72 in (ISO 32000), in mm. */
export const POINT_MM = 25.4 / 72;
