/** What a file says of a motif: a chart, what it shows, and a picture behind it to trace. */
import { showsSchema } from '../bed/index.ts';
import { gridSchema, type Grid } from '../grid/index.ts';
import { between, letters, z, type ReadonlyDeep } from '../schema/index.ts';

/** Letters of the name of a motif. */
export const MOST_MOTIF_LETTERS = 80;

/** The longer side of a picture to trace, in pixels; larger ones are made smaller before they are kept. */
export const UNDERLAY_SIDE = 1600;

/** Letters of the data URL of one picture to trace: 1600 × 1600 pixels as a good JPEG stay below it. */
export const MOST_UNDERLAY_LETTERS = 3_000_000;

/** How far a picture to trace may lie from the chart, and how large it may be, in cells. */
export const FARTHEST_UNDERLAY = 10_000;

/** Less of a picture to trace would hide it, and that has a switch of its own. */
export const LEAST_OPACITY = 0.1;

/** How far a picture to trace may be turned either way, in degrees. */
export const MOST_TURN = 180;

/** Degrees; the first files of this version knew no turn. */
const turnSchema = between(-MOST_TURN, MOST_TURN);

const underlayFields = {
  /** Data URL of a PNG or JPEG, at most {@link UNDERLAY_SIDE} pixels a side. */
  picture: z
    .string()
    .check(z.maxLength(MOST_UNDERLAY_LETTERS), z.regex(/^data:image\/(png|jpeg);base64,[A-Za-z0-9+/]+={0,2}$/)),
  left: between(-FARTHEST_UNDERLAY, FARTHEST_UNDERLAY),
  bottom: between(-FARTHEST_UNDERLAY, FARTHEST_UNDERLAY),
  columns: between(1, FARTHEST_UNDERLAY),
  rows: between(1, FARTHEST_UNDERLAY),
  /** How strongly it shows through the ground, 0 … 1. */
  opacity: between(0, 1),
  isShown: z.boolean(),
};

/** Each field by itself, as an edit sets it. */
export const underlayFieldsSchema = z.strictObject({ ...underlayFields, turn: turnSchema });

export const underlaySchema = z.strictObject({
  ...underlayFields,
  /** Degrees clockwise about its middle, as the knitting is seen in its own proportion. */
  turn: z._default(turnSchema, 0),
});
/**
 * A picture that lies behind a chart. Its place and size are in cells, from the
 * lower left corner of the chart, and are those that it has before it is turned.
 */
export interface Underlay extends ReadonlyDeep<z.infer<typeof underlaySchema>> {}

export const motifIdSchema = letters(40);
export type MotifId = z.infer<typeof motifIdSchema>;

export const motifInFile = z.strictObject({
  id: motifIdSchema,
  name: letters(MOST_MOTIF_LETTERS),
  /** What the chart shows: the finished face as worn, or the bed as the knitter sees it. */
  shows: showsSchema,
  /** Letters, or a figure that must not be seen the wrong way round. */
  isLettering: z.boolean(),
  /** A picture behind the chart, to be traced. */
  underlay: z.nullable(underlaySchema),
  rows: gridSchema,
});

/**
 * A drawing with a name. Its `grid` is declared by hand, on purpose: a file has
 * the field under another name, `rows`, and no schema infers a renaming.
 */
export interface Motif extends Omit<ReadonlyDeep<z.infer<typeof motifInFile>>, 'rows'> {
  /** The drawing in cells; what a file has as `rows`. */
  readonly grid: Grid;
}

export const motifSchema = z.codec(motifInFile, z.custom<Motif>(), {
  decode: ({ rows, ...motif }) => ({ ...motif, grid: rows }),
  encode: ({ grid, ...motif }) => ({ ...motif, rows: grid }),
});
