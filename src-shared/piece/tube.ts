/**
 * The piece closed into its tube, seen from the side.
 *
 * Each row is a ring of the stitches that the seam leaves, so its radius
 * follows from their number and the gauge of its section: a tapered sleeve is a
 * cone, and a rib of fewer stitches in 10 cm stands out under its body. The
 * finished face is outside, and places on a ring are counted from the seam to
 * the right as seen from there, 0 … the stitches of the ring. The seam runs
 * straight up; where only one edge is shaped, the wales lean, not the seam.
 *
 * The picture is a parallel view onto the axis, in mm: x to the right of the
 * axis, y up from the lower edge. A row is as tall as it is flat, by its own
 * gauge; that a wide cone leans a little is left out, so that heights can be
 * read off.
 */
import { columnOfNeedle, isMirroredOnNeedles, needleOfColumn, type Slot } from '../bed/index.ts';
import type { Gauges } from './gauges.ts';
import { layOut, rowFootMm, rowHeadMm, rowsBelow, runOf, type LaidOut } from './laid-out.ts';
import type { Piece } from './model.ts';
import type { Outline } from './shape.ts';

/** One row of the tube. */
export interface Ring {
  /** 1-based, as the row counter reads after it. */
  readonly row: number;
  /** The leftmost needle that the seam leaves. */
  readonly first: Slot;
  /** Stitches that the seam leaves; 0 where it takes them all. */
  readonly stitches: number;
  readonly radiusMm: number;
  /** Heights of its lower and upper edge. */
  readonly footMm: number;
  readonly headMm: number;
}

export interface Tube {
  /** From the lower edge up. */
  readonly rings: readonly Ring[];
  /** Its rows as they lie one over the other. */
  readonly laid: LaidOut;
  readonly tallMm: number;
  /** Height of the tallest row. */
  readonly tallestRowMm: number;
  /** Radius of the widest ring. */
  readonly radiusMm: number;
  /** True if the needles run from right to left as seen from outside. */
  readonly isMirrored: boolean;
}

/** What of a piece closes it. */
export interface Closing extends Pick<Piece, 'seamAllowance' | 'finishedFace'> {
  readonly gauges: Gauges;
}

/** A stitch as it is seen. */
export interface SeenStitch {
  readonly row: number;
  readonly needle: Slot;
  /** How far it faces us: 1 in the middle, 0 at the sides. */
  readonly facing: number;
}

/**
 * The tube of a piece. The lowest `inside` rows are not seen: the hidden half
 * of a folded hem lies against the inside of the other half.
 */
export function tubeOf(outline: Outline, { gauges, seamAllowance, finishedFace }: Closing, inside: number): Tube {
  const laid = layOut(gauges, inside + 1);
  const rings = Array.from({ length: Math.max(0, outline.rows - inside) }, (_, index): Ring => {
    const at = inside + index;
    const first = (outline.first[at] as number) + seamAllowance.left;
    const stitches = Math.max(0, (outline.last[at] as number) - seamAllowance.right - first + 1);
    const row = at + 1;
    return {
      row,
      first: first as Slot,
      stitches,
      radiusMm: (stitches * runOf(laid, row).stitchMm) / (2 * Math.PI),
      footMm: rowFootMm(laid, row),
      headMm: rowHeadMm(laid, row),
    };
  });
  return {
    rings,
    laid,
    tallMm: rings.at(-1)?.headMm ?? 0,
    tallestRowMm: rings.reduce((tallest, { row }) => Math.max(tallest, runOf(laid, row).rowMm), 0),
    radiusMm: rings.reduce((widest, { radiusMm }) => Math.max(widest, radiusMm), 0),
    // Outside is the finished face, as on a chart that shows it as worn.
    isMirrored: isMirroredOnNeedles('worn', finishedFace),
  };
}

/** The needle of the stitch at `place` (0 … stitches − 1); from outside, 0 stands right of the seam. */
export function needleRound({ isMirrored }: Tube, { first, stitches }: Ring, place: number): Slot {
  return needleOfColumn(place, stitches, first, isMirrored);
}

/** Inverse of {@link needleRound}. */
export function placeRound({ isMirrored }: Tube, { first, stitches }: Ring, needle: Slot): number {
  return columnOfNeedle(needle, stitches, first, isMirrored);
}

/**
 * Where `place` of a ring stands, in degrees to the right of the middle
 * (−180 … 180), when the seam stands `turn` degrees to the right of it.
 */
export function angleOf({ stitches }: Ring, place: number, turn: number): number {
  return within180(turn + (place * 360) / stitches);
}

/** An angle of −180 (included) … 180 degrees. */
export function within180(degrees: number): number {
  return ((((degrees + 180) % 360) + 360) % 360) - 180;
}

/** The ring at a height of the picture; none above or below the tube. */
export function ringAt({ rings, laid }: Tube, yMm: number): Ring | undefined {
  return rings[Math.floor(rowsBelow(laid, yMm))];
}

/** The stitch at a point of the picture, or null beside the tube. */
export function stitchSeenAt(tube: Tube, turn: number, xMm: number, yMm: number): SeenStitch | null {
  const ring = ringAt(tube, yMm);
  if (!ring || Math.abs(xMm) >= ring.radiusMm) return null;
  const angle = Math.asin(xMm / ring.radiusMm);
  const round = (((angle * 180) / Math.PI - turn) % 360) / 360;
  const place = Math.floor((round < 0 ? round + 1 : round) * ring.stitches) % ring.stitches;
  return { row: ring.row, needle: needleRound(tube, ring, place), facing: Math.cos(angle) };
}

/**
 * The part of places `from` … `to` (at most once round) that is seen, in mm
 * from the axis and left to right; null if all of it is behind. What comes in
 * sight on both sides is given where it is wider.
 */
export function seenSpan(
  ring: Ring,
  from: number,
  to: number,
  turn: number,
): { readonly left: number; readonly right: number } | null {
  const start = angleOf(ring, from, turn);
  const wide = ((to - from) * 360) / ring.stitches;
  const spans = [start, start - 360]
    .map((first) => ({ first: Math.max(first, -90), last: Math.min(first + wide, 90) }))
    .filter(({ first, last }) => first < last)
    .map(({ first, last }) => ({ left: sine(first) * ring.radiusMm, right: sine(last) * ring.radiusMm }))
    .sort((one, other) => other.right - other.left - (one.right - one.left));
  return spans[0] ?? null;
}

function sine(degrees: number): number {
  return Math.sin((degrees * Math.PI) / 180);
}
