/** What a file says of the sizes that pieces come in, and of values that differ from size to size. */
import { letters, upToLetters, z, type ReadonlyDeep } from '../schema/index.ts';

/** More sizes than any pattern comes in. */
export const MOST_SIZES = 20;

/** Letters of a size's name: it heads a column of numbers. */
export const MOST_SIZE_LETTERS = 24;

/** Letters of the id of a piece, a size or a pattern. */
export const MOST_ID_LETTERS = 40;

/** No blanks at either end, so that what looks alike is alike. */
const sizeNameSchema = upToLetters(MOST_SIZE_LETTERS).check(z.regex(/^\S(.*\S)?$/));

/** True for what a size may be called. */
export function isSizeName(name: string): boolean {
  return sizeNameSchema.safeParse(name).success;
}

/** Made at random by whoever adds the size, and never given to another. */
export const sizeIdSchema = letters(MOST_ID_LETTERS);
export type SizeId = z.infer<typeof sizeIdSchema>;

/** A size that every piece of a project comes in. */
export const sizeSchema = z.strictObject({ id: sizeIdSchema, name: sizeNameSchema });
export interface Size extends ReadonlyDeep<z.infer<typeof sizeSchema>> {}

/** A value of each size: one for all, and those of the sizes that have another. Whether the sizes are there is checked with the project. */
export const inSizesSchema = <S extends z.ZodMiniType>(of: S) =>
  z.strictObject({
    all: of,
    /** In the order of the sizes; no value equal to that of all. */
    but: z.array(z.strictObject({ size: sizeIdSchema, value: of })).check(z.maxLength(MOST_SIZES)),
  });
