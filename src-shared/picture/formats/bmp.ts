/**
 * What a BMP says of itself (Microsoft's description of bitmap storage:
 * BITMAPFILEHEADER, then BITMAPINFOHEADER or one of its followers). Everything
 * has its place before the pixels, and rows that are not packed are all there.
 */
import { problemError, type ProblemError } from '../../problem/index.ts';
import { viewOf } from './bytes.ts';
import type { Size } from './webp.ts';

const KIND = 'BMP';
const FILE_HEADER = 14;

/** Lengths of the headers from BITMAPINFOHEADER to BITMAPV5HEADER. */
const HEADERS = [40, 52, 56, 108, 124];

/** Compression: bits a pixel that it goes with. BI_RGB, BI_RLE8, BI_RLE4, BI_BITFIELDS. */
const DEPTHS: Readonly<Record<number, readonly number[]>> = { 0: [1, 4, 8, 16, 24, 32], 1: [8], 2: [4], 3: [16, 32] };

export function isBmp(bytes: Uint8Array): boolean {
  // Two letters alone begin many texts; the four bytes after the length are reserved and nought.
  return bytes[0] === 0x42 && bytes[1] === 0x4d && bytes.length >= FILE_HEADER && viewOf(bytes).getUint32(6) === 0;
}

/** Throws `picture-truncated` or `picture-broken`. */
export function readBmpSize(bytes: Uint8Array): Size {
  const view = viewOf(bytes);
  if (bytes.length < FILE_HEADER + 40) throw truncated();
  const [pixels, length] = [view.getUint32(10, true), view.getUint32(14, true)];
  if (!HEADERS.includes(length)) throw broken();
  if (bytes.length < FILE_HEADER + length) throw truncated();
  // A height below nought stands for rows from the top.
  const [width, height] = [view.getInt32(18, true), Math.abs(view.getInt32(22, true))];
  const [planes, depth, compression] = [view.getUint16(26, true), view.getUint16(28, true), view.getUint32(30, true)];
  if (width <= 0 || height === 0 || planes !== 1 || !DEPTHS[compression]?.includes(depth)) throw broken();
  const colours = view.getUint32(46, true);
  if (depth <= 8 && colours > 2 ** depth) throw broken();
  const palette = depth <= 8 ? 4 * (colours === 0 ? 2 ** depth : colours) : 0;
  if (pixels < FILE_HEADER + length + palette) throw broken();
  // Rows are filled up to whole words of four bytes.
  const unpacked = Math.ceil((width * depth) / 32) * 4 * height;
  const isPacked = compression === 1 || compression === 2;
  // A run of at most 255 pixels takes two bytes.
  const least = isPacked ? 2 * Math.ceil(width / 255) * height : unpacked;
  if (pixels + least > bytes.length) throw truncated();
  return { width, height };
}

function truncated(): ProblemError {
  return problemError('picture-truncated', { kind: KIND });
}

function broken(): ProblemError {
  return problemError('picture-broken', { kind: KIND, damage: 'header' });
}
