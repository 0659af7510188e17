/** Fields that many schemas have. */
import { z } from './zod.ts';

/** A whole number from `least` to `most`. */
export const whole = (least: number, most: number) => z.int().check(z.gte(least), z.lte(most));

/** A whole number from 0. */
export const count = (most: number) => whole(0, most);

/** A whole number from 1. */
export const atLeastOne = (most: number) => whole(1, most);

export const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));

/** A text of 1 to `most` letters. */
export const letters = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));

/** A text of at most `most` letters, or none. */
export const upToLetters = (most: number) => z.string().check(z.maxLength(most));
