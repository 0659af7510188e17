/**
 * The one value a person works on.
 *
 * A `Project` is immutable. It changes only through `Change` (change.ts), and
 * all that is computed is a pure function of it. What each folder's values are
 * is said once, by the schemas in its `model.ts`; the types follow from there,
 * so that what is read from a file and what the program holds cannot drift
 * apart. Rules that hold between fields (cells within the palette, bands naming
 * motifs that exist) are checked in `checks.ts`, so a `Project` in memory never
 * breaks them.
 *
 * Which piece and which size are looked at is no part of it: `project-at.ts`.
 */
import { machineSchema } from '../bed/index.ts';
import { linesSchema, MOST_COLOURS } from '../grid/index.ts';
import { motifIdSchema, motifSchema, type Motif, type MotifId } from '../motif/index.ts';
import { MOST_PATTERNS, patternSchema } from '../pattern/index.ts';
import {
  MOST_ID_LETTERS,
  MOST_NOTE_LETTERS,
  MOST_SIZES,
  pieceFields,
  sizeIdSchema,
  sizeNumbersSchema,
  sizeSchema,
} from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { count, letters, upToLetters, whole, z, type ReadonlyDeep } from '../schema/index.ts';
import { MOST_YARN_LETTERS, yarnSchema } from './yarn-model.ts';

/** More motifs than any garment has. */
export const MOST_MOTIFS = 200;

/** Letters of the name of a project. */
export const MOST_PROJECT_LETTERS = 120;

/** In percent: more than anybody winds or buys beyond what is needed. */
export const MOST_YARN_MARGIN = 100;

/** Letters of the data URLs of all pictures to trace, so that the file stays below what can be written. */
export const MOST_UNDERLAY_LETTERS_IN_ALL = 24_000_000;

/** More versions of the yarns than anyone compares. */
export const MOST_COLOURWAYS = 24;

/** Made at random by whoever adds the colourway, and never given to another. */
export const colourwayIdSchema = letters(MOST_ID_LETTERS);
export type ColourwayId = z.infer<typeof colourwayIdSchema>;

const yarnsSchema = z.array(yarnSchema).check(z.minLength(1), z.maxLength(MOST_COLOURS));

const colourwaySchema = z.strictObject({
  id: colourwayIdSchema,
  name: letters(MOST_YARN_LETTERS),
  /**
   * The yarn that stands at each place of the palette, or null for the one
   * colourway that is knitted: its yarns are those of the project, so that they
   * are said once and all that is worked out is worked out of them.
   */
  yarns: z.nullable(yarnsSchema),
});
/** The yarns of a project in one of several versions: cells stay, the yarns that they stand for are others. */
export interface Colourway extends ReadonlyDeep<z.infer<typeof colourwaySchema>> {}

/** More pieces than any garment has. */
export const MOST_PIECES = 40;

/** How often a piece is knitted: two sleeves, twelve squares of a blanket. */
export const MOST_KNIT = 999;

/** Made at random by whoever adds the piece, and never given to another. */
export const pieceIdSchema = letters(MOST_ID_LETTERS);
export type PieceId = z.infer<typeof pieceIdSchema>;

const { name, ...ofPiece } = pieceFields;

export const pieceSchema = z.strictObject({
  id: pieceIdSchema,
  name,
  /** So many of it are knitted. */
  knit: whole(1, MOST_KNIT),
  ...ofPiece,
  /** One for each size of the project, in their order. */
  perSize: z
    .array(z.strictObject({ size: sizeIdSchema, ...sizeNumbersSchema.shape }))
    .check(z.minLength(1), z.maxLength(MOST_SIZES)),
  /** In the order in which they are laid: bands by themselves, and all-overs by themselves. */
  patterns: z.array(patternSchema).check(z.maxLength(2 * MOST_PATTERNS)),
});
/** A piece in all sizes, with the patterns on it. */
export interface PieceInSizes extends ReadonlyDeep<z.infer<typeof pieceSchema>> {}

/** The fields of a project, in the order of the file. */
export const projectFields = {
  name: letters(MOST_PROJECT_LETTERS),
  /** For whoever knits it. */
  notes: upToLetters(MOST_NOTE_LETTERS),
  machine: machineSchema,
  /** To wind and to buy above what is needed, in percent. */
  yarnMargin: count(MOST_YARN_MARGIN),
  /** The palette: cells hold indices into it. */
  yarns: yarnsSchema,
  /**
   * Palette index of the yarn of the plain fabric, which is the ground of every
   * motif: its cells are no figure.
   */
  mainYarn: count(MOST_COLOURS - 1),
  /** In the order in which a person looks at them; one is knitted. */
  colourways: z.array(colourwaySchema).check(z.minLength(1), z.maxLength(MOST_COLOURWAYS)),
  motifs: z.array(motifSchema).check(z.minLength(1), z.maxLength(MOST_MOTIFS)),
  /** The sizes that every piece comes in, smallest first. */
  sizes: z.array(sizeSchema).check(z.minLength(1), z.maxLength(MOST_SIZES)),
  pieces: z.array(pieceSchema).check(z.minLength(1), z.maxLength(MOST_PIECES)),
};

export interface Project extends ReadonlyDeep<z.infer<z.ZodMiniObject<typeof projectFields>>> {}

/** The yarns, and which of them is the ground. */
export type Palette = Pick<Project, 'yarns' | 'mainYarn'>;

export const layingSchema = z.strictObject({
  name: z.enum(['move', 'paste', 'lettering']),
  motif: motifIdSchema,
  /** Its rows as a project file has them; whether its cells are yarns is known with the project. */
  rows: linesSchema,
  /** They are letters that read on the chart: from then on the motif must not be seen mirrored. */
  isLettering: z.boolean(),
});
/** Cells in hand that are not laid yet (`laying.ts`): the motif as it would be if they were laid where they are. */
export interface Laying extends ReadonlyDeep<z.infer<typeof layingSchema>> {}

/** The motif called `id`. Throws `motif-missing`. */
export function motifOf({ motifs }: Pick<Project, 'motifs'>, id: MotifId): Motif {
  const motif = motifs.find((candidate) => candidate.id === id);
  if (!motif) throw problemError('motif-missing', { motif: id });
  return motif;
}

/** The piece called `id`. Throws `RangeError` for one that is not there. */
export function pieceOf({ pieces }: Pick<Project, 'pieces'>, id: PieceId): PieceInSizes {
  const piece = pieces.find((candidate) => candidate.id === id);
  if (!piece) throw new RangeError(`There is no piece "${id}"`);
  return piece;
}
