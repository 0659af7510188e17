/** JSON of what a piece takes beside its stitches, and of the swatches that its patterns ask for. */
import { patternGauges, type Plan } from '@shared/plan/index.ts';
import type { Gauge } from '@shared/piece/index.ts';
import type { Span } from '@shared/yarn/index.ts';
import { thousandths } from './thousandths.ts';

interface SpanJson {
  readonly leastMetres: number;
  readonly mostMetres: number;
}

/** The totals hold the middle of each span. */
export interface FinishingJson {
  /** 3 to 4 times the width of the last row; null where the piece is not cast off. */
  readonly castOff: (SpanJson & { readonly widthMm: number }) | null;
  /** 1½ to 2 times the seams, each edge being half of one; null where no edge is sewn. */
  readonly sewing: (SpanJson & { readonly seamMm: number }) | null;
  /** Yarn ends to darn in, of all strands. */
  readonly tails: { readonly metres: number };
}

export interface SwatchJson {
  readonly pattern: 'band' | 'all-over';
  /** From 1, as on the sheet. */
  readonly number: number;
  /** Its first row, and the stitches there. */
  readonly row: number;
  readonly stitches: number;
  /** Its rows have a gauge of their own; if not, a second swatch would tell it. */
  readonly ownGauge: boolean;
  /** The width of these stitches at the gauge of that row, and at that of plain fabric. */
  readonly widthMm: number;
  readonly plainWidthMm: number;
}

export function finishingJson({ yarn: { finishing, uses } }: Plan): FinishingJson {
  const { castOff, sewing } = finishing;
  return {
    castOff: castOff && { widthMm: thousandths(castOff.widthMm), ...spanJson(castOff.mm) },
    sewing: sewing && { seamMm: thousandths(sewing.seamMm), ...spanJson(sewing.mm) },
    tails: { metres: thousandths(uses.reduce((sum, { tailsMm }) => sum + tailsMm, 0) / 1000) },
  };
}

/** `gauge`: that of the piece. */
export function swatchesJson(plan: Plan, gauge: Gauge): SwatchJson[] {
  return patternGauges(plan, gauge).map(({ pattern, row, stitches, isOwn, widthMm, plainMm }) => ({
    pattern: pattern.kind,
    number: pattern.number + 1,
    row,
    stitches,
    ownGauge: isOwn,
    widthMm: thousandths(widthMm),
    plainWidthMm: thousandths(plainMm),
  }));
}

function spanJson({ least, most }: Span): SpanJson {
  return { leastMetres: thousandths(least / 1000), mostMetres: thousandths(most / 1000) };
}
