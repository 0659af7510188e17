/** The row-by-row plan: everything computed from a project, in one value. */
import type { Run, Side, Slot } from '../bed/index.ts';
import type { Grid } from '../grid/index.ts';
import type { Gauges, Outline, Section, SectionName } from '../piece/index.ts';
import type { GroupPlace, PlacementChoice, PlacementQuestion } from '../placement/types.ts';
import type { MotifId } from '../project/project.ts';
import type { Blank, Repeat } from '../repeat/index.ts';
import type { Carry, Finding, Float, Wrap, WrapStrand } from '../strands/types.ts';
import type { YarnNeed } from '../yarn/types.ts';
import type { HemRow } from './hem-notes.ts';

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

export interface PlacedGroup extends GroupPlace {
  readonly band: number;
  readonly motif: MotifId;
  /** One copy, in needles and rows. */
  readonly copyWidth: number;
  readonly copyHeight: number;
  readonly across: number;
  readonly up: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly isMirrored: boolean;
}

export interface PlacedBand {
  /** What was asked of placing: the groups as they lie on the needles of the band's first row. */
  readonly question: PlacementQuestion;
  /** Ranked, best first, at most 8; `choices[taken]` is the one placed. */
  readonly choices: readonly PlacementChoice[];
  readonly taken: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** Reading of the row counter at which to knit the set-up row, or null if there is no row for it. */
  readonly setUpAt: number | null;
}

/** A fill on the needles. Copies are told by their tier (0 the lowest) and their place in it. */
export interface PlacedFill {
  readonly fill: number;
  readonly motif: MotifId;
  /** One copy: column 0 is its leftmost needle, row 0 its first row. */
  readonly copy: Grid;
  readonly isMirrored: boolean;
  readonly firstRow: number;
  readonly lastRow: number;
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

/** What becomes of the copies of a fill that have figure on the piece. */
export interface FillCopies {
  /** Knitted with all of their figure. */
  readonly whole: number;
  /** Knitted, and cut by an edge, the border or the last row. */
  readonly cut: number;
  /** Cut, and left out. */
  readonly leftOut: number;
  /** The rows on which cut copies stand, and those left out; null where there are none. */
  readonly cutRows: readonly [first: number, last: number] | null;
  readonly leftOutRows: readonly [first: number, last: number] | null;
  /** The places of the copies left out, by tier; tiers without are missing. */
  readonly without: ReadonlyMap<number, ReadonlySet<number>>;
}

export interface PlanRow {
  /** The row counter after this row. */
  readonly row: number;
  readonly section: SectionName;
  /** The carriage's side before the row. */
  readonly from: Side;
  readonly edges: Run;
  /** Needles that knit a yarn other than main, left to right, each run in one yarn. */
  readonly contrast: readonly (Run & { readonly yarn: number })[];
  /** False on a row all in contrast, on which main waits. */
  readonly isMainKnitted: boolean;
  readonly wraps: readonly Wrap[];
  readonly floats: readonly Float[];
  readonly carries: readonly Carry[];
}

export interface Plan {
  readonly outline: Outline;
  readonly sections: readonly Section[];
  readonly gauges: Gauges;
  /** The rows on which a folded hem asks for something. */
  readonly hem: readonly HemRow[];
  /** The motifs that are placed. */
  readonly extents: ReadonlyMap<MotifId, MotifExtent>;
  readonly bands: readonly PlacedBand[];
  /** All groups of all bands, in that order. */
  readonly groups: readonly PlacedGroup[];
  readonly fills: readonly (PlacedFill & { readonly copies: FillCopies })[];
  readonly fabric: Fabric;
  /** Index 0 is row 1. */
  readonly rows: readonly PlanRow[];
  readonly findings: readonly Finding[];
  readonly wrapStrands: readonly WrapStrand[];
  readonly yarn: YarnNeed;
}
