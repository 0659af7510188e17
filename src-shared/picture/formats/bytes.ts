/** What readers of all formats share: numbers and names out of the bytes of a file, and how rows of pixels are handed on. */

export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** `length` bytes from `at` as letters, one a byte; shorter where the file ends. */
export function nameAt(bytes: Uint8Array, at: number, length = 4): string {
  return String.fromCharCode(...bytes.subarray(at, at + length));
}

export function beginsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

/**
 * Told of each row: `rgba` holds `count` opaque pixels, of which the first
 * stands in column `first` and the next ones `step` columns further. Only valid
 * until the next row.
 */
export type TakeRow = (y: number, rgba: Uint8Array, first: number, step: number, count: number) => void;
