/** What a file says of the patterns on a piece: bands of groups of copies, and all-overs. */
import { MOST_STITCHES, slotSchema } from '../bed/index.ts';
import { MOST_COLOURS } from '../grid/index.ts';
import {
  extentSchema,
  inSizesSchema,
  MOST_ID_LETTERS,
  MOST_PIECE_ROWS,
  positionSchema,
  type InSizes,
} from '../piece/index.ts';
import { atLeastOne, count, letters, whole, z, type ReadonlyDeep } from '../schema/index.ts';

/** More groups than any band has, and as many first needles. */
export const MOST_GROUPS = 100;

/** More bands than any piece has, and as many all-overs. */
export const MOST_PATTERNS = 100;

/** Made at random by whoever adds the pattern, and never given to another. */
export const patternIdSchema = letters(MOST_ID_LETTERS);
export type PatternId = z.infer<typeof patternIdSchema>;

/** Further down nobody looks for a placing. */
const LAST_CHOICE = 1000;

// Whether there is a motif called so is checked with the project.
const motifNamed = z.string();

const stitches = count(MOST_STITCHES);
const rows = atLeastOne(MOST_PIECE_ROWS);
const across = atLeastOne(MOST_STITCHES);
const choice = count(LAST_CHOICE);
const unit = z.enum(['repeat', 'whole']);

/** More stripes than an order of colours has: a hundred of six rows are taller than any garment. */
export const MOST_STRIPES = 200;

// Whether there are such yarns, and neither is the main yarn, is checked with the project.
const yarn = count(MOST_COLOURS - 1);

const stripeSchema = z.strictObject({
  rows,
  /** The drawn yarns for which another is knitted; all others are knitted as drawn. */
  yarns: z.array(z.strictObject({ drawn: yarn, knitted: yarn })).check(z.maxLength(MOST_COLOURS)),
});
/** Rows of a pattern on which other yarns are knitted for those that are drawn, by palette index. */
export type Stripe = ReadonlyDeep<z.infer<typeof stripeSchema>>;

const colourOrderSchema = z.strictObject({
  /** From the pattern's first row upwards, one on top of the other. */
  stripes: z.array(stripeSchema).check(z.minLength(1), z.maxLength(MOST_STRIPES)),
  /** After the last stripe the first comes again; otherwise the rows above it are knitted as drawn. */
  repeats: z.boolean(),
});
/** Other colours up the rows of a pattern, without another drawing. */
export type ColourOrder = ReadonlyDeep<z.infer<typeof colourOrderSchema>>;
/** More cells than anybody forbids or moves by hand in one pattern. */
export const MOST_ANCHORS_BY_HAND = 2000;

const anchorByHandSchema = z.strictObject({
  motif: motifNamed,
  /**
   * On the chart of the motif as it is drawn, from 0: wherever its copies go,
   * the cell goes with them. Before 0 and from the width of a copy on it lies
   * beside the group, counted from its outermost copy.
   */
  column: whole(-2 * MOST_STITCHES, 2 * MOST_STITCHES),
  row: count(MOST_PIECE_ROWS),
  /** No anchor goes there, or one does where it breaks a float. */
  is: z.enum(['never', 'always']),
});
/** A cell of a motif that is forbidden to anchors, or wanted for one. */
export type AnchorByHand = ReadonlyDeep<z.infer<typeof anchorByHandSchema>>;

const anchorWishSchema = z.strictObject({
  /** In stitches: what floats longer than it is broken, as far as it can be. */
  longest: atLeastOne(MOST_STITCHES),
  /** Floats of main behind the figure are broken too, which speckles it. */
  isBehindFigure: z.boolean(),
  byHand: z.array(anchorByHandSchema).check(z.maxLength(MOST_ANCHORS_BY_HAND)),
});
/**
 * That no float of a pattern be longer than so many stitches. Which stitches
 * are added for it is worked out anew wherever the pattern goes.
 */
export interface AnchorWish extends ReadonlyDeep<z.infer<typeof anchorWishSchema>> {}

/** What bands and all-overs both have. */
const common = {
  /** What becomes of copies that an edge clips: knitted all the same, only where most of the figure is left, or left out. */
  cutCopies: z.enum(['kept', 'kept-if-read', 'left-out']),
  /**
   * End-needle selection on its rows: the machine brings the edge needles into
   * the pattern, and the contrast runs from edge to edge. Off for groups that
   * stand alone, on for all-overs.
   */
  endNeedles: z.boolean(),
  /** Null: every row is knitted in the yarns that it is drawn in. */
  colourOrder: z.nullable(colourOrderSchema),
  /** Null: floats stay as they are. */
  anchors: z.nullable(anchorWishSchema),
  /** What is done about floats over the limit, as far as it helps: nothing, hooked up row by row, or latched up in columns. */
  longFloats: z.enum(['left', 'hooked-up', 'latched-up']),
  /** What is done about yarn that would be carried further aside on its way up than the limit: nothing, or cut and joined again. */
  longCarries: z.enum(['carried', 'cut']),
};

/** What is done about floats over the limit. */
export type FloatMending = z.infer<typeof common.longFloats>;

/** What is done about carries over the limit. */
export type CarryMending = z.infer<typeof common.longCarries>;

/** What becomes of copies that an edge clips. */
export type ClippedCopies = z.infer<typeof common.cutCopies>;

const groupSchema = z.strictObject({
  motif: motifNamed,
  /** Copies side by side; larger sizes may have more. */
  across: inSizesSchema(across),
  /** Copies one above the other. */
  up: rows,
  /** Left and right of the figure changed. */
  isMirrored: z.boolean(),
  /** Rows that it starts above the band's first row; the lowest group of a band starts on that row. */
  rise: count(MOST_PIECE_ROWS),
  /** Knitted from a ball of contrast of its own, instead of one carried across from the groups beside it. */
  hasOwnBall: z.boolean(),
});
/** Neighbouring copies placed as one block, in all sizes. */
export interface GroupInSizes extends ReadonlyDeep<z.infer<typeof groupSchema>> {}

/** Neighbouring copies placed as one block, in one size. */
export interface Group extends Omit<GroupInSizes, 'across'> {
  /** Copies side by side. */
  readonly across: number;
  /**
   * What each size has, where they differ: it goes along with the group, so
   * that other sizes keep theirs while this one is changed.
   */
  readonly acrossInSizes?: InSizes<number>;
}

const SOLVED_RULES = [
  z.strictObject({ kind: z.literal('seam') }),
  z.strictObject({ kind: z.literal('even') }),
  z.strictObject({ kind: z.literal('margins'), stitches }),
  z.strictObject({ kind: z.literal('gaps'), stitches }),
] as const;
const solvedRuleSchema = z.discriminatedUnion('kind', SOLVED_RULES);
/** A rule from which the needles are solved. */
export type SolvedRule = ReadonlyDeep<z.infer<typeof solvedRuleSchema>>;

const firstNeedles = z.array(slotSchema).check(z.minLength(1), z.maxLength(MOST_GROUPS));

/** Groups kept or moved by hand. */
export interface ByHand {
  readonly kind: 'by-hand';
  /** The needles on which the groups begin, one a group. */
  readonly first: ReadonlyDeep<z.infer<typeof firstNeedles>>;
  /** What found the needles before they were kept or moved, to go back to. */
  readonly before?: { readonly rule: SolvedRule; readonly choice: number };
}

/** What places the groups of a band in one size. */
export type PlacementRule = SolvedRule | ByHand;

const placedSchema = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('rule'),
    /** Which of the ranked choices is taken, 0 being the best. */
    choice,
  }),
  z.strictObject({
    by: z.literal('hand'),
    /** The needles on which the groups begin, one a group. */
    first: firstNeedles,
    /** The choice that stood there before, to go back to; null where no rule found the needles. */
    before: z.nullable(choice),
  }),
]);
/** What a person chose in a size: one of the choices that the band's rule finds, or needles by hand. */
export type Placed = ReadonlyDeep<z.infer<typeof placedSchema>>;

export const bandSchema = z.strictObject({
  id: patternIdSchema,
  kind: z.literal('band'),
  groups: z.array(groupSchema).check(z.minLength(1), z.maxLength(MOST_GROUPS)),
  /** One copy is the true repeat across, or all drawn columns. */
  unit,
  /** What finds the needles, in all sizes. */
  rule: solvedRuleSchema,
  /** What is evened out: what the eye sees, or the pattern blocks. */
  judge: z.enum(['figure', 'blocks']),
  placed: inSizesSchema(placedSchema),
  position: positionSchema,
  ...common,
});
/** Groups side by side that are placed together, in all sizes. */
export interface BandInSizes extends ReadonlyDeep<z.infer<typeof bandSchema>> {}

/** Groups side by side that are placed together, in one size. */
export interface Band extends Omit<BandInSizes, 'id' | 'groups' | 'rule' | 'placed'> {
  readonly groups: readonly Group[];
  readonly rule: PlacementRule;
  /** Which of the ranked choices is taken, 0 being the best. */
  readonly choice: number;
}

const sideways = whole(-MOST_STITCHES, MOST_STITCHES);

export const allOverSchema = z.strictObject({
  id: patternIdSchema,
  kind: z.literal('all-over'),
  motif: motifNamed,
  /** One copy is the true repeat, across and up, or the whole chart. */
  unit,
  /** Left and right of the figure changed. */
  isMirrored: z.boolean(),
  position: extentSchema,
  /** Stitches kept plain along the edges of every row, counted from the edge of the piece. */
  border: z.strictObject({ left: stitches, right: stitches }),
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
  centre: z.enum(['column', 'between']),
  /** Stitches by which the whole pattern is moved from there: to the right on the needles, negative to the left. */
  shift: sideways,
  /** Stitches to the right on the needles by which each copy is moved against the one below it. Half a copy makes a brick. */
  step: sideways,
  ...common,
});
/**
 * Copies of a motif side by side and one above the other, over the whole width
 * of some rows. Its first row is the first row of a copy.
 */
export interface AllOverInSizes extends ReadonlyDeep<z.infer<typeof allOverSchema>> {}

/** A pattern all over, which is the same in all sizes, apart from what it is called by. */
export interface AllOver extends Omit<AllOverInSizes, 'id'> {}

export const patternSchema = z.discriminatedUnion('kind', [bandSchema, allOverSchema]);
/** A pattern on a piece, in all sizes: a band or an all-over. */
export type PatternInSizes = BandInSizes | AllOverInSizes;

/** A pattern on a piece, in one size. */
export type Pattern = Band | AllOver;
