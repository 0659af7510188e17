/**
 * A yarn as its label and its owner say it: name, colour, how thick it is in
 * the system of the label, and what is there of it.
 *
 * What a count comes to in tex is worked out by `yarn/tex.ts`.
 */
import { between, letters, whole, z, type ReadonlyDeep } from '../schema/index.ts';

/** Letters of the name of a yarn. */
export const MOST_YARN_LETTERS = 80;

/** Thicker than any yarn. */
export const MOST_TEX = 10_000;

/** Plies that are written beside a count. */
export const PLY_BOUNDS = { least: 1, most: 24 } as const;

/** More grams or metres than any ball or cone has, and less than any ball. */
export const BALL_BOUNDS = { least: 0.1, most: 100_000 } as const;

/** In grams or in balls. */
export const ON_HAND_BOUNDS = { least: 0, most: 100_000 } as const;

/** What each count can be: nothing thicker than {@link MOST_TEX}, nothing finer than any thread. */
export const COUNT_BOUNDS = {
  tex: { least: 0.01, most: MOST_TEX },
  metric: { least: 0.1, most: 100_000 },
  cotton: { least: 0.06, most: 100_000 },
  worsted: { least: 0.09, most: 100_000 },
  denier: { least: 0.1, most: 9 * MOST_TEX },
} as const;

/** The systems in which a count is one number. */
export type NumberedSystem = keyof typeof COUNT_BOUNDS;

const plies = whole(PLY_BOUNDS.least, PLY_BOUNDS.most);

/** One kind of count: that of a single ply, and how many of them are twisted together. */
const numbered = <System extends NumberedSystem>(system: System) =>
  z.strictObject({
    system: z.literal(system),
    // Files of earlier versions may hold any tex above 0.
    value:
      system === 'tex'
        ? z.number().check(z.gt(0), z.lte(MOST_TEX))
        : between(COUNT_BOUNDS[system].least, COUNT_BOUNDS[system].most),
    plies,
  });

const ballPart = between(BALL_BOUNDS.least, BALL_BOUNDS.most);

const countSchema = z.discriminatedUnion('system', [
  /** So many metres in a ball of so many grams. */
  z.strictObject({ system: z.literal('ball'), metres: ballPart, grams: ballPart }),
  numbered('tex'),
  numbered('metric'),
  numbered('cotton'),
  numbered('worsted'),
  numbered('denier'),
]);
/** How thick a yarn is, as its label says it (ISO 1144 for tex; Nm, Ne, worsted and denier by their definitions). */
export type YarnCount = ReadonlyDeep<z.infer<typeof countSchema>>;

const onHandSchema = z.strictObject({
  in: z.enum(['grams', 'balls']),
  amount: between(ON_HAND_BOUNDS.least, ON_HAND_BOUNDS.most),
});
/** What is there of a yarn; balls are those of the label. */
export interface OnHand extends ReadonlyDeep<z.infer<typeof onHandSchema>> {}

export const yarnSchema = z.strictObject({
  name: letters(MOST_YARN_LETTERS),
  /** `#rrggbb`, small letters. */
  colour: z.string().check(z.regex(/^#[0-9a-f]{6}$/)),
  /** How thick it is, as its label says it, or null if not known. */
  count: z.nullable(countSchema),
  /** What is there of it, or null if nobody said. */
  onHand: z.nullable(onHandSchema),
});
export interface Yarn extends ReadonlyDeep<z.infer<typeof yarnSchema>> {}
