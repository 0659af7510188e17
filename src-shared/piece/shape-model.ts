/** What a file says of the outline of a piece in one size: its stitches and rows, and the lengths that they were given as. */
import { MOST_STITCHES } from '../bed/index.ts';
import { atLeastOne, between, count, refuse, whole, z, type ReadonlyDeep } from '../schema/index.ts';

/** More rows than any piece has. */
export const MOST_PIECE_ROWS = 4000;

/** Row 1 is the cast-on, so the first row that can be shaped is the second. */
export const FIRST_SHAPED_ROW = 2;

/** Longer than {@link MOST_PIECE_ROWS} rows of the loosest gauge, in mm. */
export const MOST_LENGTH_MM = 400_000;

/** Past the last row of a piece too: the plan says so. */
const LAST_SHAPED_ROW = 9999;

/** Stitches more or fewer at an edge on one row. */
export const MOST_EDGE_CHANGE = 999;

const edgeStepSchema = z.strictObject({
  row: whole(FIRST_SHAPED_ROW, LAST_SHAPED_ROW),
  /** Stitches more from here on; negative: fewer. */
  left: whole(-MOST_EDGE_CHANGE, MOST_EDGE_CHANGE),
  /** Stitches more from here on; negative: fewer. */
  right: whole(-MOST_EDGE_CHANGE, MOST_EDGE_CHANGE),
});
/** From `row` (1-based) on, so many stitches more at each edge; negative: fewer. */
export interface EdgeStep extends ReadonlyDeep<z.infer<typeof edgeStepSchema>> {}

const stitches = atLeastOne(MOST_STITCHES);
export const rows = atLeastOne(MOST_PIECE_ROWS);

/** The length that a count was given as, in mm; left out where it was given as a count. */
export const lengthMm = z.optional(between(0, MOST_LENGTH_MM));

export const shapeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('rectangle'), stitches, rows }),
  z.strictObject({
    /**
     * Cast on `stitches`, shaped evenly on both edges to `stitchesAtTop`, then
     * `straightRows` without shaping: at least {@link LEAST_STRAIGHT_ROWS}.
     */
    kind: z.literal('tapered'),
    stitches,
    stitchesAtTop: stitches,
    rows,
    straightRows: count(MOST_PIECE_ROWS),
  }),
  z.strictObject({
    /**
     * Cast on `stitches`, shaped evenly to the waist over `rowsToWaist`, from
     * there evenly to the chest over `rowsToChest`, then straight up to `rows`.
     */
    kind: z.literal('body'),
    stitches,
    stitchesAtWaist: stitches,
    stitchesAtChest: stitches,
    rowsToWaist: count(MOST_PIECE_ROWS),
    rowsToChest: count(MOST_PIECE_ROWS),
    rows,
  }),
  z.strictObject({
    /** Cast on `stitches`, then shaped row by row: sleeve heads, necks, whatever is not even. */
    kind: z.literal('steps'),
    stitches,
    rows,
    /** In the order of their rows, one a row. */
    steps: z.array(edgeStepSchema).check(z.maxLength(MOST_PIECE_ROWS), (payload) => {
      payload.value.forEach(({ row }, s, steps) => {
        if (row <= (steps[s - 1]?.row ?? 0)) refuse(payload, [s, 'row'], 'row-not-above', {});
      });
    }),
  }),
]);
export type Shape = ReadonlyDeep<z.infer<typeof shapeSchema>>;

/** One for each count of the shapes, and for the rows of the hem. */
export const lengthsSchema = z.strictObject({
  stitches: lengthMm,
  stitchesAtTop: lengthMm,
  stitchesAtWaist: lengthMm,
  stitchesAtChest: lengthMm,
  rowsToWaist: lengthMm,
  rowsToChest: lengthMm,
  rows: lengthMm,
  straightRows: lengthMm,
  hemRows: lengthMm,
});
/**
 * The counts of a size that were given as lengths, in mm. The count is the
 * nearest to the length at the gauge, and follows when that changes
 * (`given-lengths.ts`). A length of a count that the shape does not have, or
 * that its count is not the nearest to, says nothing.
 */
export interface Lengths extends ReadonlyDeep<z.infer<typeof lengthsSchema>> {}
