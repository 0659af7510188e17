/** What a file says of the bed, and of charts and fabric as they lie on it. */
import { atLeastOne, between, plainOf, z, type ReadonlyDeep } from '../schema/index.ts';
import { label, slotLabelled, type Slot } from './slot.ts';

/** More stitches than any bed holds. */
export const MOST_STITCHES = 1000;

/** From needle to needle, in mm. */
const PITCH_MM = { least: 1, most: 30 } as const;

export const sideSchema = z.enum(['left', 'right']);
/** Left and right are the knitter's, facing the machine. */
export type Side = z.infer<typeof sideSchema>;

export const showsSchema = z.enum(['worn', 'needles']);
/** What a chart shows: the finished face as worn, or the bed as the knitter sees it. */
export type Shows = z.infer<typeof showsSchema>;

export const finishedFaceSchema = z.enum(['knit', 'purl']);
/** The side that will be seen when worn. */
export type FinishedFace = z.infer<typeof finishedFaceSchema>;

const needleLabel = z.string().check(z.regex(/^[LR][1-9]\d{0,3}$/));
/** A needle: its label in a file, a {@link Slot} inside the program. */
export const slotSchema = z.codec(needleLabel, z.custom<Slot>(), {
  decode: slotLabelled,
  encode: label,
});

export const bedSchema = z.strictObject({
  /** How many needles there are, or null if not stated. */
  needles: z.nullable(atLeastOne(MOST_STITCHES)),
  pitchMm: between(PITCH_MM.least, PITCH_MM.most),
});

export interface Bed extends ReadonlyDeep<z.infer<typeof bedSchema>> {}

/** A bed as most are, until a person says what theirs is. */
export const START_BED: Bed = { needles: 200, pitchMm: 4.5 };

/** The widest repeat of a machine whose pattern stands on fixed needles. */
export const MOST_FIXED_REPEAT = 200;

export const machineSchema = z.strictObject({
  /** A machine has one, on which all pieces of a project are knitted. */
  bed: bedSchema,
  /**
   * How the needles of a pattern row are chosen: during the pass before it,
   * standing forward to be looked at (`ahead-seen`) or not (`ahead-unseen`,
   * where nothing can be pushed forward or back), or by hand.
   */
  chooses: z.enum(['ahead-seen', 'ahead-unseen', 'by-hand']),
  /** Where a pattern can stand: anywhere, or with its repeat counted from one needle. */
  places: z.union([
    z.literal('any-needle'),
    z.strictObject({ repeat: atLeastOne(MOST_FIXED_REPEAT), from: slotSchema }),
  ]),
  /** Whether end-needle selection can be switched, is always on, or there is none. */
  endNeedles: z.enum(['switch', 'always', 'none']),
  /** Where a stitch can be made or taken before a row. */
  increases: z.enum(['both-edges', 'carriage-side']),
  /** Whether weights hang on the fabric. */
  weights: z.boolean(),
});
/** What the machine can do: asked in words, never assumed from a name. */
export interface Machine extends ReadonlyDeep<z.infer<typeof machineSchema>> {}

/** The same with its needle by its label, as messages and settings have it. What was kept before beds were is of a usual one. */
export const machineSaidSchema = z.strictObject({
  ...machineSchema.shape,
  bed: z._default(bedSchema, START_BED),
  places: z.union([
    z.literal('any-needle'),
    z.strictObject({ repeat: atLeastOne(MOST_FIXED_REPEAT), from: needleLabel }),
  ]),
});
export interface MachineSaid extends ReadonlyDeep<z.infer<typeof machineSaidSchema>> {}

export function machineAsSaid(machine: Machine): MachineSaid {
  return plainOf(machineSchema, machine);
}

export function machineFromSaid(said: MachineSaid): Machine {
  return machineSchema.parse(said);
}
