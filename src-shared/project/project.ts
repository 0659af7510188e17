/**
 * The one value a person works on.
 *
 * A `Project` is immutable. It changes only through `Change` (change.ts), and
 * all that is computed is a pure function of it. The shape of each part is
 * given once, in schema.ts, and the types follow from there, so that what is
 * read from a file and what the program holds cannot drift apart.
 */
import type { Grid } from '../grid/index.ts';
import type { FinishedFace, Shows, Side, Slot } from '../bed/index.ts';
import type { Position, Sectioned, Shape } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';

export interface Yarn {
  readonly name: string;
  /** `#rrggbb`, small letters. */
  readonly colour: string;
  /** Grams in 1000 m (ISO 1144), or null if not known. */
  readonly tex: number | null;
}

export type MotifId = string;

export interface Motif {
  readonly id: MotifId;
  readonly name: string;
  readonly grid: Grid;
  /** Palette index of the cells knitted in the main yarn. */
  readonly ground: number;
  readonly shows: Shows;
  /** Letters, or a figure that must not be seen the wrong way round. */
  readonly isLettering: boolean;
  /** A picture behind the chart, to be traced. */
  readonly underlay: Underlay | null;
}

/** A picture that lies behind a chart. Its place and size are in cells, from the lower left corner of the chart. */
export interface Underlay {
  /** Data URL of a PNG or JPEG, at most {@link UNDERLAY_SIDE} pixels a side. */
  readonly picture: string;
  readonly left: number;
  readonly bottom: number;
  readonly columns: number;
  readonly rows: number;
  /** How strongly it shows through the ground, 0 … 1. */
  readonly opacity: number;
  readonly isShown: boolean;
}

/** The longer side of a picture to trace, in pixels; larger ones are made smaller before they are kept. */
export const UNDERLAY_SIDE = 1600;

export interface Bed {
  /** How many needles there are, or null if not stated. */
  readonly needles: number | null;
  readonly pitchMm: number;
}

export interface FloatLimit {
  readonly stitches: number;
  /** Null: only stitches count. */
  readonly mm: number | null;
}

export interface Piece extends Sectioned {
  readonly name: string;
  readonly shape: Shape;
  readonly oddStitch: Side;
  readonly offset: number;
  readonly bed: Bed;
  /** Edge stitches that vanish into the seam. */
  readonly seamAllowance: { readonly left: number; readonly right: number };
  readonly finishedFace: FinishedFace;
  readonly isInfant: boolean;
  /** The carriage's side at row counter 0. */
  readonly startSide: Side;
  readonly endNeedleSelection: boolean;
  readonly floatLimit: FloatLimit;
}

/** What differs from one size of the piece to another; all else of it is shared. */
export type SizeNumbers = Pick<Piece, 'shape' | 'hemRows'>;

/** A size that is not the current one. */
export interface Size extends SizeNumbers {
  readonly name: string;
}

/**
 * The sizes of the piece, as a zipper: the numbers of the current size stand in
 * `piece`, so that whatever asks for the piece has one and nothing needs to be
 * told which; here is what it is called, and what lies on each side of it. So
 * there is always a current size, and no index that could point beside the
 * list. Sizes may differ in the kind of shape too: the smallest of a body is
 * often straight.
 */
export interface Sizes {
  readonly name: string;
  /** Smallest first, as are those of `larger`. */
  readonly smaller: readonly Size[];
  readonly larger: readonly Size[];
}

/** Neighbouring copies placed as one block. */
export interface Group {
  readonly motif: MotifId;
  /** In the current size. */
  readonly across: number;
  /**
   * In every other size, where larger sizes have more copies; left out where
   * all have as many. It stands with the group and names the sizes, not the
   * other way round, so that it comes and goes with its group. A name that is
   * no size's says nothing.
   */
  readonly acrossInSizes?: readonly { readonly size: string; readonly across: number }[];
  readonly up: number;
  /** Left and right of the figure changed. */
  readonly isMirrored: boolean;
  /** Rows that it starts above the band's first row; the lowest group of a band starts on that row. */
  readonly rise: number;
  /** Knitted from a ball of contrast of its own, instead of one carried across from the groups beside it. */
  readonly hasOwnBall: boolean;
}

/** A rule from which the needles are solved. */
export type SolvedRule =
  | { readonly kind: 'seam' }
  | { readonly kind: 'even' }
  | { readonly kind: 'margins'; readonly stitches: number }
  | { readonly kind: 'gaps'; readonly stitches: number };

export interface ByHand {
  readonly kind: 'by-hand';
  readonly first: readonly Slot[];
  /** What found the needles before they were kept or moved, to go back to. */
  readonly before?: { readonly rule: SolvedRule; readonly choice: number };
}

export type PlacementRule = SolvedRule | ByHand;

/** What becomes of copies that an edge cuts: knitted all the same, only where most of the figure is left, or left out. */
export type CutCopies = 'kept' | 'kept-if-read' | 'left-out';

/**
 * What a person chose in a size that is not the current one: which of the ranked
 * choices, and first needles kept or moved by hand. The rule that finds the
 * needles is that of all sizes.
 */
export interface ChosenInSize {
  readonly size: string;
  readonly choice: number;
  readonly first: readonly Slot[] | null;
}

/** Groups side by side that are placed together. */
export interface Band {
  readonly groups: readonly Group[];
  /** One copy is the true repeat across, or all drawn columns. */
  readonly unit: 'repeat' | 'whole';
  readonly rule: PlacementRule;
  /** What is evened out: what the eye sees, or the pattern blocks. */
  readonly judge: 'figure' | 'blocks';
  /** Which of the ranked choices is taken, 0 being the best. */
  readonly choice: number;
  /** Of other sizes; those that are not named have the best choice. */
  readonly chosenInSizes?: readonly ChosenInSize[];
  readonly position: Position;
  readonly cutCopies: CutCopies;
}

/**
 * Copies of a motif side by side and one above the other, over the whole width
 * of some rows. Its first row is the first row of a copy.
 */
export interface Fill {
  readonly motif: MotifId;
  /** One copy is the true repeat, across and up, or the whole chart. */
  readonly unit: 'repeat' | 'whole';
  /** Left and right of the figure changed. */
  readonly isMirrored: boolean;
  readonly firstRow: number;
  /** Null: to the top of the piece, however long it is. */
  readonly lastRow: number | null;
  /** Stitches kept plain along the edges of every row, counted from the edge of the piece. */
  readonly border: { readonly left: number; readonly right: number };
  /**
   * What stands in the middle of the stitches that are seen on the first row
   * (those that the seam leaves): the middle column of a copy, or the line
   * between two copies. Where that cannot be, the pattern lies half a stitch
   * further to the left on the needles.
   *
   * - `column`: exact where copy and row are both odd, or both even; an even
   *   copy has no middle column, so the line in its middle counts.
   * - `between`: exact on an even row, half a stitch off on an odd one.
   */
  readonly centre: 'column' | 'between';
  /** Stitches by which the whole pattern is moved from there: to the right on the needles, negative to the left. */
  readonly shift: number;
  /** Stitches to the right on the needles by which each copy is moved against the one below it. Half a copy makes a brick. */
  readonly step: number;
  readonly cutCopies: CutCopies;
}

export interface Project {
  readonly name: string;
  /** The palette: cells hold indices into it. */
  readonly yarns: readonly Yarn[];
  readonly motifs: readonly Motif[];
  readonly piece: Piece;
  readonly sizes: Sizes;
  readonly bands: readonly Band[];
  readonly fills: readonly Fill[];
}

/** The motif called `id`. Throws `motif-missing`. */
export function motifOf(project: Project, id: MotifId): Motif {
  const motif = project.motifs.find((candidate) => candidate.id === id);
  if (!motif) throw problemError('motif-missing', { motif: id });
  return motif;
}

/** Palette index of the yarn of the plain fabric: the ground that all motifs share. */
export function mainYarn(project: Project): number {
  return project.motifs[0]?.ground ?? 0;
}
