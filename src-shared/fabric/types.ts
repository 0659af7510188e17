/**
 * The words of patterns on the piece.
 *
 * A `…Place` is where something lies on the needles; what is `Placed…` is all
 * of it as it lies on the piece: its place, what is knitted there, and what
 * becomes of its copies.
 */
import type { Slot } from '../bed/index.ts';
import type { Grid } from '../grid/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { Blank, Repeat } from '../motif/repeat/index.ts';
import type { Outline, SectionSpan } from '../piece/index.ts';
import type { GroupPlace, PlacementChoice, PlacementQuestion } from '../placement/index.ts';

/** The marker of a fabric cell that lies beside the piece. */
export const OUTSIDE = 255;

/**
 * What is knitted on every needle of every row, as palette indices.
 * `cells[(row - 1) * width + (slot - first)]`; {@link OUTSIDE} beside the piece.
 * As on the needles: left is the knitter's left.
 */
export interface Fabric {
  /** Slot of column 0. */
  readonly first: number;
  readonly width: number;
  readonly rows: number;
  readonly cells: Uint8Array;
}

/** What placing must know of a motif as drawn; the rest of a `Measure` is for the one who draws. */
export interface MotifExtent {
  readonly width: number;
  readonly height: number;
  /** Null where there is no figure. */
  readonly blank: Blank | null;
  readonly repeat: Repeat;
}

/** Copies of one motif on some rows of the piece. */
export interface MotifCopies {
  readonly motif: MotifId;
  /** One copy: column 0 is its leftmost needle, row 0 its first row. */
  readonly copy: Grid;
  /** Palette index of the cells of a copy that are no figure. */
  readonly ground: number;
  readonly isMirrored: boolean;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** A copy that the edge clips. */
export interface ClippedCopy {
  /** Counted from the lower left of the group, along its rows. */
  readonly index: number;
  /** Figure stitches that lie beside the piece, of all that a copy has. */
  readonly lost: number;
  readonly figure: number;
  /** First and last row on which some are lost. */
  readonly rows: readonly [first: number, last: number];
}

export interface PlacedGroup extends GroupPlace, MotifCopies {
  readonly band: number;
  readonly across: number;
  readonly up: number;
  /** The copies that lose figure at an edge. */
  readonly clipped: readonly ClippedCopy[];
  /** Those of them that are not knitted, by their index. */
  readonly leftOut: ReadonlySet<number>;
}

export interface PlacedBand {
  /** What was asked of placing: the groups as they lie on the needles of the band's first row. */
  readonly question: PlacementQuestion;
  /** Ranked, best first, at most 8; `choices[taken]` is the one placed. */
  readonly choices: readonly PlacementChoice[];
  readonly taken: number;
  readonly groups: readonly PlacedGroup[];
  readonly firstRow: number;
  readonly lastRow: number;
  /** Reading of the row counter at which to knit the set-up row, or null if there is no row for it. */
  readonly setUpAt: number | null;
}

/** Where the copies of a fill lie. They are told by their tier (0 the lowest) and their place in it. */
export interface FillPlace extends MotifCopies {
  readonly fill: number;
  /** As of a {@link PlacedBand}. */
  readonly setUpAt: number | null;
  /** Stitches that are plain at the edges of each row. */
  readonly border: { readonly left: number; readonly right: number };
  /** Stitches at the edges of each row that the seam takes. */
  readonly seamAllowance: { readonly left: number; readonly right: number };
  /** Leftmost needle of the copy at place 0 of tier 0; it may lie beside the piece. */
  readonly origin: Slot;
  /** Needles to the right by which each tier is moved against the one below it. */
  readonly step: number;
  /** It lies half a stitch to the left of where the centre was asked for. */
  readonly isHalfOff: boolean;
}

export interface PlacedFill extends FillPlace {
  readonly copies: FillCopies;
}

/** What becomes of the copies of a fill that have figure on the piece. */
export interface FillCopies {
  /** Knitted with all of their figure. */
  readonly whole: number;
  /** Knitted, and clipped by an edge, the border or the last row. */
  readonly clipped: number;
  /** Clipped, and left out. */
  readonly leftOut: number;
  /** The rows on which clipped copies stand, and those left out; null where there are none. */
  readonly clippedRows: readonly [first: number, last: number] | null;
  readonly leftOutRows: readonly [first: number, last: number] | null;
  /** The places of the copies left out, by tier; tiers without are missing. */
  readonly without: ReadonlyMap<number, ReadonlySet<number>>;
}

/** The piece and the patterns on it, before anything is knitted. */
export interface PlacedPatterns {
  readonly outline: Outline;
  readonly sections: readonly SectionSpan[];
  /** The motifs that are placed. */
  readonly extents: ReadonlyMap<MotifId, MotifExtent>;
  readonly bands: readonly PlacedBand[];
  readonly fills: readonly PlacedFill[];
}
