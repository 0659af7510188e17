/** How decoders hand their pixels on: row by row, so that no more is held than whoever takes them keeps. */

/**
 * Told of each row: `rgba` holds `count` opaque pixels, of which the first
 * stands in column `first` and the next ones `step` columns further. Only valid
 * until the next row.
 */
export type TakeRow = (y: number, rgba: Uint8Array, first: number, step: number, count: number) => void;
