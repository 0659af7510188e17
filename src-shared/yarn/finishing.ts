/** What main takes beside its stitches: casting off, and sewing up. Lengths in mm. */
import { gaugeAt, lengthMm, stitchesAt, stitchWidthMm, type Gauges, type Outline, type Piece } from '../piece/index.ts';

/** Casting off takes 3 to 4 times the width (common practice, no source). */
export const CAST_OFF_WIDTHS = { least: 3, most: 4 } as const;

/** A seam takes 1½ to 2 times its length (common practice, no source). */
export const SEAM_LENGTHS = { least: 1.5, most: 2 } as const;

export interface Span {
  readonly least: number;
  readonly most: number;
}

export interface Finishing {
  /** Of the last row, for casting off; null where the piece is taken off otherwise. */
  readonly castOff: { readonly widthMm: number; readonly mm: Span } | null;
  /** Of both edges that a seam takes stitches of: each is half a seam. Null where no edge is sewn. */
  readonly sewing: { readonly seamMm: number; readonly mm: Span } | null;
}

export const NO_FINISHING: Finishing = { castOff: null, sewing: null };

/** An edge whose stitches a seam takes is sewn to another, and takes half of the yarn. */
export function finishingOf(
  { ends, seamAllowance }: Pick<Piece, 'ends' | 'seamAllowance'>,
  outline: Outline,
  gauges: Gauges,
): Finishing {
  const { rows } = outline;
  const widthMm = stitchesAt(outline, rows) * stitchWidthMm(gaugeAt(gauges, rows));
  const edges = (['left', 'right'] as const).filter((side) => seamAllowance[side] > 0).length;
  const seamMm = (edges / 2) * lengthMm(gauges, 1, rows);
  return {
    castOff: ends === 'cast-off' ? { widthMm, mm: times(CAST_OFF_WIDTHS, widthMm) } : null,
    sewing: edges > 0 ? { seamMm, mm: times(SEAM_LENGTHS, seamMm) } : null,
  };
}

/** In the middle of what it takes. */
export function middleOf(span: Span | undefined): number {
  return span ? (span.least + span.most) / 2 : 0;
}

function times({ least, most }: Span, mm: number): Span {
  return { least: least * mm, most: most * mm };
}
