/** What a file says of a piece. */
import { finishedFaceSchema, MOST_STITCHES, sideSchema } from '../bed/index.ts';
import { between, count, letters, refuse, upToLetters, whole, z, type ReadonlyDeep } from '../schema/index.ts';
import { loopSourceSchema } from './loop-model.ts';
import { lengthMm, lengthsSchema, MOST_PIECE_ROWS, rows, shapeSchema } from './shape-model.ts';

/** Letters of the name of a piece or of one of its sections. */
export const MOST_NAME_LETTERS = 80;

/** Letters of a tension, as a knitter writes it. */
export const MOST_TENSION_LETTERS = 24;

/** Letters of the notes on a piece, and of those on a project. */
export const MOST_NOTE_LETTERS = 4000;

/** More sections than any piece has. */
export const MOST_SECTIONS = 40;

/** Stitches that a seam takes at an edge. */
export const MOST_SEAM_STITCHES = 50;

/** The gauges that any fabric has; beyond them a number was mistyped. */
export const GAUGE_BOUNDS = {
  stitches: { least: 1, most: 200 },
  rows: { least: 1, most: 300 },
} as const;

/** The longest float that a limit can name, in mm. */
export const MOST_FLOAT_MM = 1000;

const gaugeSchema = z.strictObject({
  /** Stitches in 10 cm across. */
  stitches: between(GAUGE_BOUNDS.stitches.least, GAUGE_BOUNDS.stitches.most),
  /** Rows in 10 cm up. */
  rows: between(GAUGE_BOUNDS.rows.least, GAUGE_BOUNDS.rows.most),
});
/** Stitches and rows in 10 cm, and the lengths that follow. */
export interface Gauge extends ReadonlyDeep<z.infer<typeof gaugeSchema>> {}

const turningSchema = z.enum(['none', 'loose', 'eyelets']);
/** What is made of the row along which a hem folds: nothing, a row knitted looser, or a row of eyelets. */
export type Turning = z.infer<typeof turningSchema>;

const hemSchema = z.strictObject({
  /** What is made of the row along which it folds: nothing, a row knitted looser, or a row of eyelets. */
  turning: turningSchema,
  /** Null: the gauge of the piece. */
  gauge: z.nullable(gaugeSchema),
});
/** How a folded hem is knitted; how many rows it takes stands beside it, since that differs from size to size. */
export interface Hem extends ReadonlyDeep<z.infer<typeof hemSchema>> {}

const tension = upToLetters(MOST_TENSION_LETTERS);

const tensionSchema = z.strictObject({
  /** Rows of waste yarn below an open start. */
  waste: tension,
  /** The half of a folded hem that is hidden. */
  facing: tension,
  turningRow: tension,
  /** The half of a folded hem that is seen. */
  outside: tension,
  /** The row that joins a hem. */
  joiningRow: tension,
  /** Rows that nothing else is said of. */
  main: tension,
  /** Rows in pattern. */
  pattern: tension,
  /** The last row before casting off. */
  lastRow: tension,
});
/**
 * Tension belongs to rows. Each is as the knitter writes it on the carriage's
 * dial or beside it; empty where nothing is said.
 */
export interface Tension extends ReadonlyDeep<z.infer<typeof tensionSchema>> {}

const sectionSchema = z.strictObject({
  /** No two sections of a piece are called alike. */
  name: letters(MOST_NAME_LETTERS),
  isLined: z.boolean(),
  /** Null: the gauge of the piece. */
  gauge: z.nullable(gaugeSchema),
  /** As the knitter writes it on the carriage's dial or beside it; empty where nothing is said. */
  tension,
});

const sectionRowsSchema = z.strictObject({
  rows,
  /** The length that `rows` were given as; left out where they were given as rows. */
  lengthMm,
});
/** How high a section is in one size. */
export interface SectionRows extends ReadonlyDeep<z.infer<typeof sectionRowsSchema>> {}

/** A section with a name of its own, above the hem, in one size: a rib, a band of pattern. */
export interface Section extends ReadonlyDeep<z.infer<typeof sectionSchema>>, SectionRows {}

const sectionsSchema = z.array(sectionSchema).check(z.maxLength(MOST_SECTIONS), (payload) => {
  const names = new Set<string>();
  payload.value.forEach(({ name }, p) => {
    if (names.has(name)) refuse(payload, [p, 'name'], 'twice', { name });
    names.add(name);
  });
});

const floatLimitSchema = z.strictObject({
  stitches: count(MOST_STITCHES),
  /** Null: only stitches count. */
  mm: z.nullable(between(0, MOST_FLOAT_MM)),
});
export interface FloatLimit extends ReadonlyDeep<z.infer<typeof floatLimitSchema>> {}

const seamStitches = count(MOST_SEAM_STITCHES);

const hemRows = count(MOST_PIECE_ROWS);

/** What a piece is in every size, in the order of the file. */
export const pieceFields = {
  name: letters(MOST_NAME_LETTERS),
  /** On which side of the centre the extra stitch of an odd piece stands. */
  oddStitch: sideSchema,
  /** Needles to the right of the centred position (negative: to the left). */
  offset: whole(-MOST_STITCHES, MOST_STITCHES),
  hem: hemSchema,
  /** From the bottom up; the body goes on above them. */
  sections: sectionsSchema,
  /** In 10 cm; hem and sections may have their own. */
  gauge: gaugeSchema,
  /** Edge stitches that vanish into the seam. */
  seamAllowance: z.strictObject({
    left: seamStitches,
    right: seamStitches,
    /** The length that `left` was given as; left out where it was given as stitches. */
    leftMm: lengthMm,
    /** The length that `right` was given as; left out where it was given as stitches. */
    rightMm: lengthMm,
  }),
  /** The side that will be seen when worn. */
  finishedFace: finishedFaceSchema,
  isInfant: z.boolean(),
  isLined: z.boolean(),
  /** The carriage's side at row counter 0. */
  startSide: sideSchema,
  /** Floats and carries above it are found too long to leave loose. */
  floatLimit: floatLimitSchema,
  /** `usual`: on waste yarn where a hem folds, whose open loops are hung, else closed. */
  begins: z.enum(['usual', 'closed', 'open', 'picked-up']),
  ends: z.enum(['cast-off', 'waste-yarn', 'on-a-thread']),
  tension: tensionSchema,
  /** For whoever knits it. */
  notes: upToLetters(MOST_NOTE_LETTERS),
  /** Where the length of yarn in a stitch is known from. */
  loop: loopSourceSchema,
};
type PieceFields = ReadonlyDeep<z.infer<z.ZodMiniObject<typeof pieceFields>>>;

/** More findings than anybody leaves as they are. */
const MOST_LEFT = 500;

/** A code, the rows from first to last, and a mark of what is said of them: `long-floats 61-91 0a1b2c3d`. */
const leftAsIsSchema = z
  .array(z.string().check(z.maxLength(80), z.regex(/^[a-z-]+ \d+-\d+ [0-9a-f]{8}$/)))
  .check(z.minLength(1), z.maxLength(MOST_LEFT));

/** What differs from one size of a piece to another; all else of it is shared. */
export const sizeNumbersSchema = z.strictObject({
  shape: shapeSchema,
  /** Rows of the folded hem, 0 if there is none. */
  hemRows,
  /** Left out where all counts of the size were given as counts. */
  lengths: z.optional(lengthsSchema),
  /** Findings that a person leaves as they are, each by its code and its place; left out where there are none. */
  leftAsIs: z.optional(leftAsIsSchema),
  /** One for each section, from the bottom up. */
  sectionRows: z.array(sectionRowsSchema).check(z.maxLength(MOST_SECTIONS)),
});
export interface SizeNumbers extends ReadonlyDeep<z.infer<typeof sizeNumbersSchema>> {}

/** A piece in one of its sizes. */
export interface Piece extends Omit<PieceFields, 'sections'>, Omit<SizeNumbers, 'sectionRows'> {
  /** From the bottom up; the body goes on above them. */
  readonly sections: readonly Section[];
}

/** What a piece says about its sections. */
export interface Sectioned extends Pick<Piece, 'hemRows' | 'hem' | 'sections' | 'gauge' | 'isLined'> {}
