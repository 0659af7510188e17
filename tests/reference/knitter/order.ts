/** The running order as `plan --json` gives it, read with a schema of our own. Needles become positions. */
import { z } from 'zod';
import { needle, side, span } from './needles.ts';

const count = z.int().min(0);
const feeder = z.union([z.literal(1), z.literal(2)]);
const edge = side;
/** Names and numbers alike: they are only compared. */
const id = z.union([z.string(), z.number()]).transform(String);
const needles = z.array(needle).min(1);

const act = z.discriminatedUnion('act', [
  z.object({
    act: z.literal('cast-on'),
    needles: span,
    yarn: z.string(),
    ball: id.nullish(),
    how: z.enum(['closed', 'open', 'picked-up']),
    wasteRows: count.nullish(),
  }),
  z.object({ act: z.literal('counter'), reading: count }),
  z.object({ act: z.literal('tension'), part: z.string(), section: z.string().nullish(), text: z.string() }),
  z.object({ act: z.literal('thread'), feeder, yarn: z.string(), ball: id.nullish() }),
  z.object({
    act: z.literal('unthread'),
    feeder,
    yarn: z.string(),
    /** Of a yarn that is laid by hand on other rows, or that another length of it waits beside. */
    ball: id.nullish(),
    waitsAt: z.union([z.literal('cut'), needle]),
    /** The tail that is left where it is cut. */
    mm: z.number().nullish(),
  }),
  z.object({ act: z.literal('carriage'), set: z.enum(['plain', 'pattern']) }),
  z.object({ act: z.literal('selecting'), on: z.boolean() }),
  z.object({ act: z.literal('end-needles'), on: z.boolean() }),
  z.object({
    act: z.literal('first-needles'),
    pattern: id,
    row: z.int().min(1),
    groups: z
      .array(
        z.object({ needle, last: needle, motif: z.string(), copies: z.number().positive(), mirrored: z.boolean() }),
      )
      .min(1),
  }),
  z.object({ act: z.literal('increase'), edge, needles }),
  z.object({ act: z.literal('decrease'), edge, needles }),
  z.object({ act: z.literal('cast-off'), edge, needles: span }),
  z.object({ act: z.literal('cast-on-more'), edge, needles: span }),
  z.object({ act: z.literal('eyelets'), needles }),
  z.object({ act: z.literal('push-forward'), needles }),
  z.object({ act: z.literal('push-back'), needles }),
  z.object({ act: z.literal('wrap'), needle, edge, yarn: z.string(), strand: id }),
  z.object({ act: z.literal('strand'), id, at: z.enum(['start', 'end']), mm: z.number().nullish() }),
  z.object({
    act: z.literal('lay'),
    ball: id,
    yarn: z.string(),
    needles: z.array(span).min(1),
    crosses: z.array(id).default([]),
  }),
  z.object({ act: z.literal('cut'), ball: z.nullable(id), yarn: z.string(), mm: z.number().nullish() }),
  z.object({ act: z.literal('hang-hem'), needles: span, loops: count, edgeLoop: edge }),
  z.object({ act: z.literal('remove-waste') }),
  z.object({ act: z.literal('hook-up'), needle, yarn: z.string(), float: span }),
  z.object({
    act: z.literal('latch-up'),
    needle,
    yarn: z.string(),
    /** Where another ball of the yarn floats behind the needle too. */
    ball: id.nullish(),
    rows: z.tuple([z.int().min(1), z.int().min(1)]),
  }),
  z.object({ act: z.literal('weights'), do: z.enum(['hang', 'move', 'off']) }),
  z.object({ act: z.literal('check'), forward: count, first: needle.nullish(), last: needle.nullish() }),
  z.object({
    act: z.literal('finish'),
    how: z.enum(['cast-off', 'waste-yarn', 'on-a-thread']),
    needles: span,
    /** A side, or the needle at it. */
    startsAt: z.union([side, needle]),
    mm: z.number().nullish(),
  }),
]);

/**
 * What holds while a row is knitted. It says again what the acts have brought
 * about, so it may be missing (in steps read off a printed sheet it is); where
 * it stands it has to be true.
 */
const holding = {
  needles: span.optional(),
  carriage: z.enum(['plain', 'pattern']).optional(),
  selecting: z.boolean().optional(),
  feeders: z.object({ 1: z.string().nullable(), 2: z.string().nullable() }).optional(),
};

const stop = z.object({
  kind: z.literal('stop'),
  id,
  counter: count,
  row: z.int().min(1).nullable(),
  carriageAt: side,
  acts: z.array(act),
  ...holding,
});

const stretch = z.object({
  kind: z.literal('stretch'),
  first: z.int().min(1),
  last: z.int().min(1),
  carriageAt: side,
  ...holding,
});

export const runningOrder = z.array(z.discriminatedUnion('kind', [stop, stretch])).min(2);

export type Act = z.output<typeof act>;
export type ActName = Act['act'];
export type ActOf<Name extends ActName> = Extract<Act, { act: Name }>;
export type Stop = z.output<typeof stop>;
export type Stretch = z.output<typeof stretch>;
export type Holding = Pick<Stop, keyof typeof holding>;

/** The same as JSON: needles are labels. */
export type OrderJson = z.input<typeof runningOrder>;
export type StopJson = z.input<typeof stop>;
export type StretchJson = z.input<typeof stretch>;
export type ActJson = z.input<typeof act>;
