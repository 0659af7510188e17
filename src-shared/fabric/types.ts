/**
 * The words of patterns on the piece.
 *
 * A `…Place` is where something lies on the needles; what is `Placed…` is all
 * of it as it lies on the piece: its place, what is knitted there, and what
 * becomes of its copies. Bands solve where their groups go and all-overs tile
 * the rows; either way what comes of it are copies ({@link PlacedCopies}), and
 * whoever cuts, knits or counts them need not know by which of the two.
 */
import type { Run, Slot } from '../bed/index.ts';
import type { Grid } from '../grid/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { Blank, Repeat } from '../motif/repeat/index.ts';
import type { ColourOrder, PatternName } from '../pattern/index.ts';
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

/**
 * Where copies of one motif lie: side by side, and one above the other in
 * tiers. A copy is told by its tier (0 the lowest) and its place in it.
 */
export interface CopiesPlace {
  readonly motif: MotifId;
  /** One copy: column 0 is its leftmost needle, row 0 its first row. */
  readonly copy: Grid;
  /** Palette index of the cells of a copy that are no figure. */
  readonly ground: number;
  readonly isMirrored: boolean;
  readonly firstRow: number;
  readonly lastRow: number;
  /** Leftmost needle of the copy at place 0 of tier 0; it may lie beside the piece. */
  readonly origin: Slot;
  /** Needles to the right by which each tier is moved against the one below it. */
  readonly step: number;
  /** The needles that they take on every row that reaches so far; null: as many as the row has. */
  readonly block: Run | null;
  /** Stitches that stay plain at the edges of each row. */
  readonly border: { readonly left: number; readonly right: number };
  /** Other colours up the rows, and the row from which they are counted; null: as drawn. */
  readonly colours: { readonly order: ColourOrder; readonly from: number } | null;
}

/** A copy that loses figure: an edge, the border or the last row clips it. */
export interface ClippedCopy {
  readonly tier: number;
  readonly place: number;
  /** Figure stitches that are lost, of all that a copy has. */
  readonly lost: number;
  readonly figure: number;
  /** First and last row on which some are lost. */
  readonly rows: readonly [first: number, last: number];
}

/** What becomes of the copies that an edge reaches. */
export interface Clipping {
  /** How many copies are knitted with all of their figure. */
  readonly whole: number;
  /** Those that are knitted as far as they go. */
  readonly clipped: readonly ClippedCopy[];
  /** Those that are not knitted. */
  readonly leftOut: readonly ClippedCopy[];
  /** The places of the copies left out, by tier; tiers without are missing. */
  readonly without: ReadonlyMap<number, ReadonlySet<number>>;
}

export interface PlacedCopies extends CopiesPlace, Clipping {}

/** A group: so many copies across, on needles of its own. */
export interface PlacedGroup extends GroupPlace, PlacedCopies {
  readonly block: Run;
  /** Which of the bands it belongs to, from 0. */
  readonly band: number;
  readonly across: number;
  readonly up: number;
}

/** What it is called and which rows a pattern has, by whichever of the two. */
interface PatternPlace extends PatternName {
  readonly firstRow: number;
  readonly lastRow: number;
  /** Reading of the row counter at which to knit the set-up row, or null if there is no row for it. */
  readonly setUpAt: number | null;
}

export interface PlacedBand extends PatternPlace {
  readonly kind: 'band';
  /** What was asked of placing: the groups as they lie on the needles of the band's first row. */
  readonly question: PlacementQuestion;
  /** Ranked, best first, at most 8; `choices[taken]` is the one placed. */
  readonly choices: readonly PlacementChoice[];
  readonly taken: number;
  readonly groups: readonly PlacedGroup[];
}

export interface PlacedAllOver extends PatternPlace, PlacedCopies {
  readonly kind: 'all-over';
  /** Stitches at the edges of each row that the seam takes. */
  readonly seamAllowance: { readonly left: number; readonly right: number };
  /** It lies half a stitch to the left of where the centre was asked for. */
  readonly isHalfOff: boolean;
}

export type PlacedPattern = PlacedBand | PlacedAllOver;

/** The piece and the patterns on it, before anything is knitted. */
export interface PlacedPatterns {
  readonly outline: Outline;
  readonly sections: readonly SectionSpan[];
  /** The motifs that are placed. */
  readonly extents: ReadonlyMap<MotifId, MotifExtent>;
  /** In the order in which the piece has them. */
  readonly patterns: readonly PlacedPattern[];
}
