/** Fields that several parts of the contract have. */
import { letters, upToLetters, z } from '../schema/index.ts';

/** Nothing is asked, or answered. */
export const emptySchema = z.strictObject({});

export const pathSchema = letters(4096);

/** Names a state of a file: what was read, so that a later write can tell if somebody else wrote since. */
export const stampSchema = upToLetters(100);
