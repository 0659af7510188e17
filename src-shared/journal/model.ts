/**
 * What is written down of a piece on the needles: of what it is a piece, and
 * what its knitter did, one thing after the other.
 *
 * Whether a knitter can have done that is not known here, but by whoever
 * follows the order (`knitting/progress.ts`).
 */
import { sideSchema } from '../bed/index.ts';
import { atLeastOne, count, letters, upToLetters, z, type ReadonlyDeep } from '../schema/index.ts';

/** More rows than any piece has; readings of the counter go up to there. */
const MOST_READING = 1_000_000;
/** More acts than are done at one reading. */
const MOST_ACTS = 100_000;
const MOST_NAME_LETTERS = 300;
const MOST_PATH_LETTERS = 4096;
/** Letters of a running order as text: a blanket of a thousand rows has a few million. */
export const MOST_ORDER_LETTERS = 40_000_000;
/** As often as a piece may be knitted. */
const MOST_COPIES = 999;

const reading = count(MOST_READING);
const order = letters(MOST_ORDER_LETTERS);
const digest = z.string().check(z.regex(/^\d{1,9}-[0-9a-f]{8}$/));
const named = z.strictObject({ id: letters(MOST_NAME_LETTERS), name: upToLetters(MOST_NAME_LETTERS) });

/** What a knitter does; `reading` is what the counter read before it. */
export const eventSchema = z.discriminatedUnion('kind', [
  /** The row above the reading is knitted. */
  z.strictObject({ kind: z.literal('row-done'), reading }),
  /** A row was counted that is not knitted. */
  z.strictObject({ kind: z.literal('back'), reading }),
  /** The counter is put right, and the fabric is as it is. */
  z.strictObject({ kind: z.literal('go-to'), reading, to: reading }),
  /** The rows above `to` are ravelled. */
  z.strictObject({ kind: z.literal('ripped-back'), reading, to: reading }),
  /** An act at the reading, by its index, is done, or is not after all. */
  z.strictObject({ kind: z.literal('ticked'), reading, act: count(MOST_ACTS) }),
  z.strictObject({ kind: z.literal('unticked'), reading, act: count(MOST_ACTS) }),
  /** The knitter looked where the carriage stands. */
  z.strictObject({ kind: z.literal('carriage-seen'), reading, at: sideSchema }),
  /** The piece is off the needles. */
  z.strictObject({ kind: z.literal('finished'), reading }),
  /** From here on another order is followed: the design was changed, and the knitter takes it. */
  z.strictObject({ kind: z.literal('order-taken'), reading, digest, order }),
]);
export type KnittingEvent = ReadonlyDeep<z.infer<typeof eventSchema>>;

/** Which piece on the needles: of a project, in a size, the so manieth of those that are knitted of it. */
export const pieceKeySchema = z.strictObject({
  /** `path`: its file; null where it was never saved. */
  project: z.strictObject({ name: upToLetters(MOST_NAME_LETTERS), path: z.nullable(letters(MOST_PATH_LETTERS)) }),
  piece: named,
  size: named,
  copy: atLeastOne(MOST_COPIES),
});
export interface PieceKey extends ReadonlyDeep<z.infer<typeof pieceKeySchema>> {}

/** What is begun: the order as text (`knitting/order-file.ts`) with its digest. */
export const beginningSchema = z.strictObject({ of: pieceKeySchema, digest, order });
export interface Beginning extends ReadonlyDeep<z.infer<typeof beginningSchema>> {}

export const entryIdSchema = z.string().check(z.regex(/^[a-z0-9-]{8,64}$/));

/** An event as it is written: from 1, when, and an id from whoever saw it, so that one that is sent again is known. */
export const entrySchema = z.strictObject({
  number: atLeastOne(Number.MAX_SAFE_INTEGER),
  id: entryIdSchema,
  at: z.iso.datetime({ precision: 3 }),
  event: eventSchema,
});
export interface Entry extends ReadonlyDeep<z.infer<typeof entrySchema>> {}
