/** Telling an SVG by its first bytes, and how long one may be. */
import { problemError } from '../problem/index.ts';

/** Longer drawings are refused: 4 MB of lines and curves are no chart. */
export const MOST_SVG_BYTES = 4 * 1024 * 1024;

/** True for bytes that begin as an SVG does: with its element, or with what may stand before it. */
export function isSvg(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 4096)).replace(/^(?:\xef\xbb\xbf)?\s*/, '');
  return start.startsWith('<') && /<(?:[\w.-]+:)?svg[\s>/]/.test(start);
}

/** Throws `file-too-large`. */
export function assertSvgLength(bytes: Uint8Array): void {
  if (bytes.length > MOST_SVG_BYTES)
    throw problemError('file-too-large', { bytes: bytes.length, most: MOST_SVG_BYTES });
}
