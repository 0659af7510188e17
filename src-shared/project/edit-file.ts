/**
 * Edits as text, and back: how they are sent and kept.
 *
 * Fields are written as a project file has them. Cells that are painted are
 * written as runs: where one begins, and a letter for each cell from there on.
 */
import { CELL_LETTERS, gridSchema, MOST_COLUMNS, MOST_ROWS, type Patch } from '../grid/index.ts';
import { motifIdSchema, motifInFile, motifSchema, underlayFieldsSchema } from '../motif/index.ts';
import { allOverSchema, bandSchema, MOST_PATTERNS, patternIdSchema, patternSchema } from '../pattern/index.ts';
import { sizeIdSchema, sizeNumbersSchema, type SizeNumbers } from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import { checked, count, letters, plainOf, refuse, z } from '../schema/index.ts';
import type { Edit } from './edit.ts';
import { MOST_MOTIFS, pieceIdSchema, pieceSchema, projectFields } from './model.ts';

/** A place in a list, or behind its last. */
const place = count(Math.max(MOST_MOTIFS, 2 * MOST_PATTERNS));
const cell = count(MOST_COLUMNS * MOST_ROWS - 1);

const patchSchema = z.codec(z.array(z.tuple([cell, letters(MOST_COLUMNS * MOST_ROWS)])), z.custom<Patch>(), {
  decode: (runs, payload) => {
    const patch = patchOf(runs);
    if (patch === null) refuse(payload, [], 'other', {});
    return patch ?? z.NEVER;
  },
  encode: runsOf,
});

const { id: _id, rows: _rows, ...motifFields } = motifInFile.shape;
const { motifs: _motifs, pieces: _pieces, ...ownFields } = projectFields;
const { id: _pieceId, patterns: _patterns, ...ownOfPiece } = pieceSchema.shape;
const { id: _bandId, kind: _bandKind, ...ownOfBand } = bandSchema.shape;
const { id: _allOverId, kind: _allOverKind, ...ownOfAllOver } = allOverSchema.shape;

/** The fields that a thing may be without. */
type Optional<T> = { [Key in keyof T]-?: undefined extends T[Key] ? Key : never }[keyof T];

/** Fields of a thing that is without some afterwards: those stand among what is `gone`. */
function fieldsThatGo<Shape extends z.core.$ZodLooseShape, Key extends string>(shape: Shape, mayGo: readonly Key[]) {
  const gone = z.enum(mayGo);
  return z.codec(z.strictObject({ ...shape, gone: z.optional(z.array(gone)) }), z.custom<Record<string, unknown>>(), {
    decode: (written) => {
      const { gone: without = [], ...to } = written as { readonly gone?: readonly Key[] };
      return { ...to, ...Object.fromEntries(without.map((key) => [key, undefined])) };
    },
    encode: (to) => {
      const without = mayGo.filter((key) => key in to && to[key] === undefined);
      return (without.length > 0 ? { ...to, gone: without } : to) as never;
    },
  });
}

/** All of them, or the compiler says which is missing. */
const NUMBERS_MAY_GO: Readonly<Record<Optional<SizeNumbers>, true>> = { lengths: true, leftAsIs: true };
const numbersFields = fieldsThatGo(
  z.partial(sizeNumbersSchema).shape,
  Object.keys(NUMBERS_MAY_GO) as Optional<SizeNumbers>[],
);

const set = z.literal('set');
const insert = z.literal('insert');
const ofMotifs = { list: z.literal('motifs') };
const ofPieces = { list: z.literal('pieces') };
const ofPatterns = { list: z.literal('patterns'), piece: pieceIdSchema };
/** Of a motif, a piece or a pattern: the bounds of all are the same. */
const id = motifIdSchema;

const editsSchema = z.array(
  z.union([
    z.strictObject({ kind: z.literal('paint'), motif: motifIdSchema, patch: patchSchema }),
    z.strictObject({ kind: set, of: z.literal('project'), to: z.partial(z.strictObject(ownFields)) }),
    z.strictObject({
      kind: set,
      of: z.literal('piece'),
      piece: pieceIdSchema,
      to: z.partial(z.strictObject(ownOfPiece)),
    }),
    z.strictObject({
      kind: set,
      of: z.literal('numbers'),
      piece: pieceIdSchema,
      size: sizeIdSchema,
      to: numbersFields,
    }),
    z.strictObject({
      kind: set,
      of: z.literal('motif'),
      motif: motifIdSchema,
      to: z.partial(z.strictObject({ ...motifFields, grid: gridSchema })),
    }),
    z.strictObject({ kind: set, of: z.literal('underlay'), motif: motifIdSchema, to: z.partial(underlayFieldsSchema) }),
    z.strictObject({
      kind: set,
      of: z.literal('band'),
      piece: pieceIdSchema,
      pattern: patternIdSchema,
      to: z.partial(z.strictObject(ownOfBand)),
    }),
    z.strictObject({
      kind: set,
      of: z.literal('all-over'),
      piece: pieceIdSchema,
      pattern: patternIdSchema,
      to: z.partial(z.strictObject(ownOfAllOver)),
    }),
    z.strictObject({ kind: insert, ...ofMotifs, at: place, item: motifSchema }),
    z.strictObject({ kind: insert, ...ofPieces, at: place, item: pieceSchema }),
    z.strictObject({ kind: insert, ...ofPatterns, at: place, item: patternSchema }),
    ...[ofMotifs, ofPieces, ofPatterns].flatMap((list) => [
      z.strictObject({ kind: z.literal('remove'), ...list, id }),
      z.strictObject({ kind: z.literal('move'), ...list, id, at: place }),
    ]),
  ]),
);

export function editsToText(edits: readonly Edit[]): string {
  return JSON.stringify(plainOf(editsSchema, edits as never));
}

/** The edits that the text holds, each right by itself, or null. Whether they fit a project is seen when they are applied. */
export function editsFromText(text: string): readonly Edit[] | null {
  const raw = outcome(() => JSON.parse(text) as unknown);
  const read = raw.ok ? checked(editsSchema, raw.value) : raw;
  return read.ok ? (read.value as readonly Edit[]) : null;
}

/** Cells that stand side by side in a row, or at the end of one and the beginning of the next, as one run. */
function runsOf({ at, to }: Patch): [number, string][] {
  const runs: [number, string][] = [];
  let end = -1;
  at.forEach((index, i) => {
    const letter = CELL_LETTERS.charAt(to[i] as number);
    const last = runs.at(-1);
    if (last && index === end) last[1] += letter;
    else runs.push([index, letter]);
    end = index + 1;
  });
  return runs;
}

/** Null for a letter that names no yarn, and where a run does not begin behind the one before. */
function patchOf(runs: readonly (readonly [number, string])[]): Patch | null {
  const at: number[] = [];
  const to: number[] = [];
  for (const [begin, cells] of runs) {
    if (begin <= (at.at(-1) ?? -1)) return null;
    for (let i = 0; i < cells.length; i++) {
      at.push(begin + i);
      to.push(CELL_LETTERS.indexOf(cells.charAt(i)));
    }
  }
  return to.includes(-1) ? null : { at: Uint32Array.from(at), to: Uint8Array.from(to) };
}
