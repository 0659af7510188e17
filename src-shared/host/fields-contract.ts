/** Fields that several parts of the contract have. */
import { letters, upToLetters, z } from '../schema/index.ts';

/** Nothing is asked, or answered. */
export const emptySchema = z.strictObject({});

export const pathSchema = letters(4096);

/** Names a state of a file: what was read, so that a later write can tell if somebody else wrote since. */
export const stampSchema = upToLetters(100);

/** Bytes as they are, with a buffer of their own that can be handed on. */
export const bytesSchema = z.custom<Uint8Array<ArrayBuffer>>(
  (value) => value instanceof Uint8Array && value.buffer instanceof ArrayBuffer,
);
