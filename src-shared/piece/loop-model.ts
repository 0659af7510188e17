/** Where the length of yarn in a stitch is known from. */
import { atLeastOne, between, z, type ReadonlyDeep } from '../schema/index.ts';

/** More stitches, and more rows, than any swatch has. */
export const SWATCH_COUNT = { least: 1, most: 10_000 } as const;

/** What a swatch weighs, and how long the yarn of its stitches is. */
export const SWATCH_GRAMS = { least: 0.1, most: 10_000 } as const;
export const SWATCH_MM = { least: 1, most: 10_000_000 } as const;

/** How a length off the machine compares to the same one on it: no fabric comes to less or more. */
export const REST_RATIO = { least: 0.3, most: 3 } as const;

const stitches = atLeastOne(SWATCH_COUNT.most);
const ratio = between(REST_RATIO.least, REST_RATIO.most);

export const loopSourceSchema = z.discriminatedUnion('from', [
  /** From the gauge, which was counted on fabric in this state. */
  z.strictObject({ from: z.literal('gauge'), state: z.enum(['dry-relaxed', 'wet-relaxed', 'fully-relaxed']) }),
  /** From a gauge that was counted on the machine; width and length of the knitter's own fabric at rest, by those on the machine. */
  z.strictObject({ from: z.literal('machine'), width: ratio, length: ratio }),
  /** The yarn of so many stitches, unravelled and measured. */
  z.strictObject({ from: z.literal('unravelled'), stitches, mm: between(SWATCH_MM.least, SWATCH_MM.most) }),
  /** A plain swatch in main, weighed. */
  z.strictObject({
    from: z.literal('weighed'),
    stitches,
    rows: stitches,
    grams: between(SWATCH_GRAMS.least, SWATCH_GRAMS.most),
  }),
]);
/** Where the length of yarn in a stitch of plain fabric is known from, at the gauge of the piece. */
export type LoopSource = ReadonlyDeep<z.infer<typeof loopSourceSchema>>;
