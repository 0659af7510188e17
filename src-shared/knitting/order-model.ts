/** A knitter's order as it is kept in a text: plain data, needles as numbers, rows that are alike said once. */
import { sideSchema, type Slot } from '../bed/index.ts';
import { atLeastOne, count, letters, upToLetters, z, type ReadonlyDeep } from '../schema/index.ts';

const MOST_ROWS = 1_000_000;
const MOST_ITEMS = 100_000;
const MOST_LETTERS = 4096;

/** JSON knows a zero below zero, and no needle is called so. */
const slot = z.custom<Slot>((value) => Number.isSafeInteger(value) && !Object.is(value, -0));
const run = z.strictObject({ first: slot, last: slot });
const slots = z.array(slot).check(z.maxLength(MOST_ITEMS));
const yarn = count(255);
const row = atLeastOne(MOST_ROWS);
const reading = count(MOST_ROWS);
const number = atLeastOne(MOST_ITEMS);
const ball = z.nullable(number);
const mm = z.number().check(z.gte(0));
const text = upToLetters(MOST_LETTERS);
const feeder = z.union([z.literal(1), z.literal(2)]);
const setting = z.enum(['plain', 'pattern']);
const patternName = z.strictObject({ kind: z.enum(['band', 'all-over']), number: count(MOST_ITEMS) });
const motif = letters(MOST_LETTERS);

const actSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('cast-on'),
    needles: run,
    yarn,
    // Orders that were kept before it was told have none.
    ball: z._default(ball, null),
    how: z.enum(['closed', 'open', 'picked-up']),
    wasteRows: count(MOST_ROWS),
    wasteTension: text,
  }),
  z.strictObject({ kind: z.literal('counter'), reading }),
  z.strictObject({
    kind: z.literal('tension'),
    part: z.union([
      z.enum(['main', 'facing', 'turningRow', 'outside', 'joiningRow', 'pattern', 'lastRow']),
      z.strictObject({ section: text }),
    ]),
    text,
  }),
  z.strictObject({ kind: z.literal('thread'), feeder, yarn, ball }),
  z.strictObject({
    kind: z.literal('unthread'),
    feeder,
    yarn,
    ball,
    waitsAt: z.union([z.literal('cut'), slot]),
    tailMm: z.nullable(mm),
  }),
  z.strictObject({ kind: z.literal('carriage'), set: setting }),
  z.strictObject({ kind: z.enum(['selecting', 'end-needles']), isOn: z.boolean() }),
  z.strictObject({
    kind: z.literal('first-needles'),
    patterns: z.array(patternName).check(z.maxLength(MOST_ITEMS)),
    row,
    groups: z
      .array(z.strictObject({ needle: slot, last: slot, motif, copies: number, isMirrored: z.boolean() }))
      .check(z.maxLength(MOST_ITEMS)),
  }),
  z.strictObject({ kind: z.enum(['increase', 'decrease']), edge: sideSchema, needles: slots }),
  z.strictObject({ kind: z.enum(['cast-off', 'cast-on-more']), edge: sideSchema, needles: run }),
  z.strictObject({ kind: z.enum(['eyelets', 'push-forward', 'push-back']), needles: slots }),
  z.strictObject({ kind: z.literal('wrap'), needle: slot, edge: sideSchema, yarn, strand: number }),
  z.strictObject({ kind: z.literal('strand'), strand: number, at: z.enum(['start', 'end']), mm }),
  z.strictObject({
    kind: z.literal('lay'),
    ball: number,
    yarn,
    needles: z.array(run).check(z.minLength(1), z.maxLength(MOST_ITEMS)),
    crosses: z.array(number).check(z.maxLength(MOST_ITEMS)),
  }),
  z.strictObject({ kind: z.literal('cut'), ball, yarn, tailMm: mm }),
  z.strictObject({ kind: z.literal('hang-hem'), needles: run, loops: count(MOST_ITEMS), edgeLoop: sideSchema }),
  z.strictObject({ kind: z.literal('remove-waste') }),
  z.strictObject({ kind: z.literal('hook-up'), needle: slot, yarn, float: run }),
  z.strictObject({ kind: z.literal('latch-up'), needle: slot, yarn, ball: z.optional(number), first: row, last: row }),
  z.strictObject({ kind: z.literal('weights'), do: z.enum(['hang', 'move', 'off']) }),
  z.strictObject({ kind: z.literal('check'), forward: count(MOST_ITEMS), first: slot, last: slot }),
  z.strictObject({
    kind: z.literal('finish'),
    how: z.enum(['cast-off', 'waste-yarn', 'on-a-thread']),
    needles: run,
    startsAt: sideSchema,
    mm: z.nullable(mm),
  }),
]);

const fed = z.nullable(yarn);
const holding = {
  needles: run,
  carriage: setting,
  isSelecting: z.boolean(),
  feeders: z.strictObject({ 1: fed, 2: fed }),
};

const itemSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('stop'),
    id: text,
    counter: reading,
    row: z.nullable(row),
    carriageAt: sideSchema,
    acts: z.array(actSchema).check(z.maxLength(MOST_ITEMS)),
    ...holding,
  }),
  z.strictObject({ kind: z.literal('stretch'), first: row, last: row, carriageAt: sideSchema, ...holding }),
]);

/** First and last needle, and the yarn. */
const yarnRun = z.tuple([slot, slot, yarn]);

export const orderTextSchema = z.strictObject({
  order: z.array(itemSchema).check(z.minLength(2), z.maxLength(MOST_ITEMS)),
  /** The rows that differ, and for each row (index 0 is row 1) which of them it is. */
  contrast: z.strictObject({
    kinds: z.array(z.array(yarnRun).check(z.maxLength(MOST_ITEMS))).check(z.maxLength(MOST_ITEMS)),
    rows: z.array(count(MOST_ITEMS)).check(z.minLength(1), z.maxLength(MOST_ITEMS)),
  }),
  groups: z
    .array(
      z.strictObject({
        pattern: patternName,
        motif,
        needles: run,
        copies: number,
        firstRow: row,
        lastRow: row,
      }),
    )
    .check(z.maxLength(MOST_ITEMS)),
  yarns: z
    .array(z.strictObject({ name: text, colour: z.string().check(z.regex(/^#[0-9a-f]{6}$/)) }))
    .check(z.minLength(1), z.maxLength(256)),
  mainYarn: yarn,
  motifs: z.array(z.strictObject({ id: motif, name: text })).check(z.maxLength(MOST_ITEMS)),
  chooses: z.enum(['ahead-seen', 'ahead-unseen', 'by-hand']),
});
export type OrderText = ReadonlyDeep<z.infer<typeof orderTextSchema>>;
