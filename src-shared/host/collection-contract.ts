/**
 * What the window asks of the collection: a folder of project files that hold
 * one motif each. Files are named there by their names in the folder, never by
 * paths: which folder it is, the host knows.
 */
import { MOST_COLOURS, MOST_COLUMNS, MOST_ROWS } from '../grid/index.ts';
import { MOST_MOTIF_LETTERS } from '../motif/index.ts';
import type { Problem } from '../problem/index.ts';
import { atLeastOne, count, letters, upToLetters, z } from '../schema/index.ts';
import { emptySchema, pathSchema, stampSchema } from './fields-contract.ts';

/** Files of the folder that are listed. More motifs than anybody keeps in one. */
export const MOST_COLLECTED = 5000;

/** Bytes of one file: the largest motif there can be has 4 MB. */
export const MOST_COLLECTED_BYTES = 8_000_000;

/** Files whose facts come in one answer, so that the first are seen soon and the rest can be given up. */
export const MOST_LOOKED_AT = 24;

/** A file in the folder itself, that is not hidden and called as projects are. */
const fileSchema = z.string().check(z.maxLength(255), z.regex(/^[^./\\\0][^/\\\0]*\.walewright$/i));

export function isCollectedName(name: string): boolean {
  return fileSchema.safeParse(name).success;
}

const sizeFields = { width: atLeastOne(MOST_COLUMNS), height: atLeastOne(MOST_ROWS) };
const name = letters(MOST_MOTIF_LETTERS);
const text = upToLetters(MOST_COLLECTED_BYTES);

/** Why a file is no motif of the collection; its place is the name of the file. */
const problemSchema = z.custom<Problem>(
  (value) => typeof value === 'object' && value !== null && 'code' in value && typeof value.code === 'string',
);

const collectedSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('motif'),
    file: fileSchema,
    stamp: stampSchema,
    name,
    ...sizeFields,
    repeat: z.strictObject(sizeFields),
    /** Those that it is drawn in, the ground first. */
    yarns: z.array(z.strictObject({ name: z.string(), colour: z.string() })).check(z.maxLength(MOST_COLOURS)),
  }),
  /** It is left as it is. */
  z.strictObject({ kind: z.literal('unusable'), file: fileSchema, problem: problemSchema }),
  /** It was there when the folder was listed, and is not now. */
  z.strictObject({ kind: z.literal('gone'), file: fileSchema }),
]);

/** A motif that is kept under the name of another. */
const namesakeSchema = z.strictObject({ file: fileSchema, stamp: stampSchema, name, ...sizeFields });

/* Each method by itself: the page is sent none of them, and a table of them that is spread into another would be. */

/** The folder, and the files in it by name. `left`: so many more are there than are listed. */
export const collectionList = {
  params: emptySchema,
  result: z.strictObject({
    folder: pathSchema,
    /** False: the person chose it. */
    isOwn: z.boolean(),
    files: z.array(fileSchema).check(z.maxLength(MOST_COLLECTED)),
    left: count(Number.MAX_SAFE_INTEGER),
  }),
};

/** What files hold, in the order asked. */
export const collectionLook = {
  params: z.strictObject({ files: z.array(fileSchema).check(z.minLength(1), z.maxLength(MOST_LOOKED_AT)) }),
  result: z.array(collectedSchema).check(z.maxLength(MOST_LOOKED_AT)),
};

/** The text of a file that holds one motif. */
export const collectionRead = {
  params: z.strictObject({ file: fileSchema }),
  result: z.strictObject({ text, stamp: stampSchema }),
};

/**
 * Keeps the motif of a project that holds one. Where another of that name is
 * kept and nobody has said what becomes of it, nothing is written, and the
 * answer says which to ask about.
 */
export const collectionKeep = {
  params: z.strictObject({
    text,
    there: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('ask') }),
      z.strictObject({ kind: z.literal('keep-both') }),
      z.strictObject({ kind: z.literal('replace'), file: fileSchema, stamp: stampSchema }),
    ]),
  }),
  result: z.discriminatedUnion('kind', [
    /** `same`: it was kept already, just so. */
    z.strictObject({ kind: z.literal('kept'), as: z.enum(['new', 'replaced', 'same']), file: fileSchema }),
    z.strictObject({ kind: z.literal('asks'), there: z.array(namesakeSchema).check(z.maxLength(MOST_COLLECTED)) }),
  ]),
};

/** The folder from now on; null: that of the program. */
export const collectionChoose = { params: z.strictObject({ folder: z.nullable(pathSchema) }), result: emptySchema };
