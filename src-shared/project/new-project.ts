/**
 * New projects from what a person knows at the start: how large a motif is to
 * be, or a few measurements of a piece. Nothing is in them that was not asked.
 */
import { makeGrid } from '../grid/index.ts';
import {
  facingRows,
  nearestCount,
  stitchWidthMm,
  type Gauge,
  type Lengths,
  type Piece,
  type Shape,
} from '../piece/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { Band } from '../pattern/index.ts';
import type { Project } from './model.ts';
import { START_PIECE, START_YARNS, startBand, projectAround, withOnlyPiece } from './start.ts';

/** What a new piece is, which says what is measured of it. */
export const NEW_PIECE_KINDS = ['sleeve', 'body', 'round', 'square'] as const;
/** `body`: a front or a back. `round`: a hat or a cuff. `square`: a square, or a scarf. */
export type NewPieceKind = (typeof NEW_PIECE_KINDS)[number];

/** Columns and rows of a motif that is to be drawn. */
export interface MotifSize {
  readonly width: number;
  readonly height: number;
}

export interface NewPiece {
  readonly kind: NewPieceKind;
  readonly gauge: Gauge;
  /** In mm, finished: round the wrist or the head, or straight across. */
  readonly widthMm: number;
  /** In mm, finished: round the upper arm of a sleeve. The others are as wide all the way up. */
  readonly topMm: number;
  /** In mm, finished: from the fold of a hem, or from the cast-on, to the top. */
  readonly lengthMm: number;
  /** In mm: how deep a hem is that is folded to the inside; 0 for none. */
  readonly hemMm: number;
  /** Stitches that the seam takes at each edge. */
  readonly seam: number;
  readonly isInfant: boolean;
  /** A motif to draw, placed as one group; null for a plain piece. */
  readonly motif: MotifSize | null;
}

export interface NewNames {
  readonly project: string;
  readonly motif: string;
  readonly piece: string;
}

/**
 * The piece with these measurements: as many stitches and rows as come nearest
 * to them, those of both seams added to the width, those of the hem's hidden
 * half to the length. What was given as a length stays one when the gauge changes.
 *
 * A sleeve widens by as many stitches at both edges, so it may come out a
 * stitch wider at the top. Counts are not bounded here: the forms bound them.
 */
export function pieceMeasuring(wanted: NewPiece, name: string): Piece {
  const { gauge, widthMm, lengthMm, hemMm, seam } = wanted;
  const inSeams = 2 * seam;
  const stitches = nearestCount(widthMm, gauge.stitches) + inSeams;
  const rows = nearestCount(lengthMm + hemMm, gauge.rows);
  const hemRows = hemMm === 0 ? 0 : 2 * nearestCount(hemMm, gauge.rows);
  const seamsMm = inSeams * stitchWidthMm(gauge);
  const { shape, lengths } = shapeOf(wanted, { stitches, rows, seamsMm });
  return {
    ...START_PIECE,
    name,
    gauge,
    shape,
    hemRows,
    lengths: {
      ...lengths,
      stitches: widthMm + seamsMm,
      rows: lengthMm + hemMm,
      ...(hemMm > 0 && { hemRows: 2 * hemMm }),
    },
    seamAllowance: { left: seam, right: seam },
    isInfant: wanted.isInfant,
  };
}

function shapeOf(
  { kind, gauge, topMm, seam }: NewPiece,
  { stitches, rows, seamsMm }: { readonly stitches: number; readonly rows: number; readonly seamsMm: number },
): { readonly shape: Shape; readonly lengths: Lengths } {
  if (kind !== 'sleeve') return { shape: { kind: 'rectangle', stitches, rows }, lengths: {} };
  const nearest = nearestCount(topMm, gauge.stitches) + 2 * seam;
  const stitchesAtTop = nearest + (Math.abs(nearest - stitches) % 2);
  return {
    shape: { kind: 'tapered', stitches, stitchesAtTop, rows, straightRows: 1 },
    lengths: { stitchesAtTop: topMm + seamsMm },
  };
}

/** A project for a piece of these measurements. */
export function projectForPiece(wanted: NewPiece, names: NewNames): Project {
  const { width, height } = wanted.motif ?? { width: 24, height: 24 };
  const project = projectAround(names.project, names.motif, makeGrid(width, height), 0, 'worn', START_YARNS);
  const motif = project.motifs[0]?.id ?? '';
  const piece = pieceMeasuring(wanted, names.piece);
  return withOnlyPiece(project, piece, wanted.motif === null ? null : firstBand(piece, motif, height));
}

/** One motif of `height` rows in the middle of the hem's outside, or above a hem that is not as deep. */
function firstBand(piece: Piece, motif: MotifId, height: number): Band {
  const band = startBand(motif, [1]);
  const isTaller = piece.hemRows > 0 && height > piece.hemRows - facingRows(piece);
  return isTaller ? { ...band, position: { kind: 'above-hem', rows: 2 } } : band;
}

/** A project for a motif of so many stitches and rows, which is on no piece yet. */
export function projectForMotif({ width, height }: MotifSize, names: NewNames): Project {
  const project = projectAround(names.project, names.motif, makeGrid(width, height), 0, 'worn', START_YARNS);
  return withOnlyPiece(project, { ...START_PIECE, name: names.piece }, null);
}
