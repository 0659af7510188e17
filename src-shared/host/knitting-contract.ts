/**
 * What the window asks of the journals of pieces on the needles: one for each
 * piece in a size, and for each of those that are knitted of it. They are kept
 * apart from the project's file; which file is whose, the host knows.
 */
import { sideSchema } from '../bed/index.ts';
import { beginningSchema, entryIdSchema, entrySchema, eventSchema, pieceKeySchema } from '../journal/index.ts';
import type { Problem } from '../problem/index.ts';
import { atLeastOne, count, upToLetters, z } from '../schema/index.ts';
import { emptySchema } from './fields-contract.ts';

/** Events of one call: what was counted while nothing could be written. */
export const MOST_EVENTS = 5000;

/** More pieces than anybody has on the needles. */
const MOST_LISTED = 10_000;
const MOST_TEXT = 60_000_000;
const MOST_ENTRIES = Number.MAX_SAFE_INTEGER;

const text = upToLetters(MOST_TEXT);
const entries = z.array(entrySchema);
const problemSchema = z.custom<Problem>(
  (value) => typeof value === 'object' && value !== null && 'code' in value && typeof value.code === 'string',
);

/* Each method by itself: the page is sent none of them. */

/**
 * Begins a piece, and gives its journal as text. Where one was begun already,
 * that one is given and nothing is written, unless it `isAnew`: then the one
 * before is put aside.
 */
export const knittingBegin = {
  params: z.strictObject({ begun: beginningSchema, isAnew: z.boolean() }),
  result: z.strictObject({ text, isNew: z.boolean() }),
};

/** The journal of a piece as text; null where none was begun. */
export const knittingRead = {
  params: z.strictObject({ of: pieceKeySchema }),
  result: z.nullable(z.strictObject({ text })),
};

/** What was written behind the first `after` entries: for a window that looks whether another has counted. */
export const knittingSince = {
  params: z.strictObject({ of: pieceKeySchema, after: count(MOST_ENTRIES) }),
  result: z.strictObject({ entries }),
};

/**
 * Writes events behind the first `after` entries, in their order; it answers
 * when they are on the disk. Where others stand behind those by now, nothing is
 * written, and the answer has them. Events that are sent again, which their ids
 * tell, are written once.
 */
export const knittingAppend = {
  params: z.strictObject({
    of: pieceKeySchema,
    after: count(MOST_ENTRIES),
    events: z
      .array(z.strictObject({ id: entryIdSchema, event: eventSchema }))
      .check(z.minLength(1), z.maxLength(MOST_EVENTS)),
  }),
  /** `entries`: all behind the first `after`, those just written among them. */
  result: z.strictObject({ isKept: z.boolean(), entries }),
};

/** All pieces on the needles of all projects, last counted first. */
export const knittingList = {
  params: emptySchema,
  result: z
    .array(
      z.discriminatedUnion('kind', [
        z.strictObject({
          kind: z.literal('piece'),
          of: pieceKeySchema,
          /** So many of so many rows are knitted. */
          reading: count(MOST_ENTRIES),
          last: atLeastOne(MOST_ENTRIES),
          isFinished: z.boolean(),
          carriageAt: sideSchema,
          /** When it was counted last; null: it was cast on at most. */
          countedAt: z.nullable(z.iso.datetime({ precision: 3 })),
        }),
        /** It stays where it is. */
        z.strictObject({ kind: z.literal('unusable'), file: z.string(), problem: problemSchema }),
      ]),
    )
    .check(z.maxLength(MOST_LISTED)),
};

/**
 * A project has another file or name from now on: its pieces go on under that.
 * Those of a project that was saved before stay with its old file as well.
 * Another count that is there already is put aside, unless it went on from the
 * same one.
 */
export const knittingSavedAs = {
  params: z.strictObject({ from: pieceKeySchema.shape.project, to: pieceKeySchema.shape.project }),
  result: emptySchema,
};
