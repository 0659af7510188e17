/** What a file says of where patterns stand up and down the piece. */
import { count, letters, refuse, z, type ReadonlyDeep } from '../schema/index.ts';
import { MOST_NAME_LETTERS } from './model.ts';
import { lengthMm, MOST_PIECE_ROWS, rows } from './shape-model.ts';

/** One that is gone may still be named: the plan says so, and nothing is lost. */
const SECTION_NAMES = [
  z.enum(['hem-back', 'hem-front', 'body']),
  z.strictObject({ named: letters(MOST_NAME_LETTERS) }),
] as const;
export type SectionName = ReadonlyDeep<z.infer<(typeof SECTION_NAMES)[number]>>;

/** Rows that something can be placed within. */
export type Region = 'piece' | SectionName;

/** So many plain rows lie between a pattern and what it keeps away from. */
const distance = {
  rows: count(MOST_PIECE_ROWS),
  /** The length that `rows` were given as; left out where they were given as rows. */
  lengthMm,
};

/** So many plain rows from an edge of the piece or of a section. */
const fromEdge = <Edge extends z.core.$ZodType>(edge: Edge) =>
  z.strictObject({
    kind: z.literal('from-edge'),
    edge,
    section: z.union([z.literal('piece'), ...SECTION_NAMES]),
    ...distance,
  });

/** Above the hem, however high that is in a size. */
const aboveHemSchema = z.strictObject({ kind: z.literal('above-hem'), ...distance });

/** From a row of the row counter on. */
const fromRowSchema = z.strictObject({ kind: z.literal('from-row'), row: rows });

export const positionSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('centred'),
    /** `shown`: the front of the hem, or the body of a piece without one. */
    section: z.union([z.enum(['shown', 'piece']), ...SECTION_NAMES]),
    /** Where the odd row goes if what is left over cannot be halved. */
    oddRow: z.enum(['below', 'above']),
  }),
  fromEdge(z.enum(['lower', 'upper'])),
  aboveHemSchema,
  fromRowSchema,
]);
/** Where rows stand of which it is known how many they are: those of a band. */
export type Position = ReadonlyDeep<z.infer<typeof positionSchema>>;

const startSchema = z.discriminatedUnion('kind', [fromEdge(z.literal('lower')), aboveHemSchema, fromRowSchema]);
/** Where rows start: the positions that say so however many rows there are. */
export type Start = ReadonlyDeep<z.infer<typeof startSchema>>;

const endSchema = z.discriminatedUnion('kind', [
  /** No rows from the upper edge of the piece: up to the top. */
  fromEdge(z.literal('upper')),
  z.strictObject({ kind: z.literal('to-row'), row: rows }),
]);
/** Where rows end. */
export type End = ReadonlyDeep<z.infer<typeof endSchema>>;

export const extentSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('from-to'), from: startSchema, to: endSchema }).check((payload) => {
    const { from, to } = payload.value;
    // Any other pair may be right in some size, and the plan says where it is not.
    if (from.kind === 'from-row' && to.kind === 'to-row' && to.row < from.row) {
      refuse(payload, ['to', 'row'], 'below-first-row', {});
    }
  }),
  /** So many rows, which stand as those of a band do. */
  z.strictObject({ kind: z.literal('so-high'), height: rows, at: positionSchema }),
]);
/** The rows of an all-over: from one place to another, how far apart these may be in a size, or so many. */
export type Extent = ReadonlyDeep<z.infer<typeof extentSchema>>;

/** One of the places by which rows are said. */
export type Place = Position | End;

/** A place so many plain rows away from something, which can be given as a length. */
export type Distant = Extract<Place, { readonly kind: 'from-edge' | 'above-hem' }>;
