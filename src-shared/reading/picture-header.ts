/**
 * What a picture file says of itself, read before anything is decoded: a few
 * bytes can declare more pixels than there is memory for, and a camera notes
 * which way up it was held.
 */
import { problemError } from '../problem/index.ts';

export interface PictureHeader {
  readonly kind: 'PNG' | 'JPEG' | 'WebP';
  /** As stored, before it is turned upright. */
  readonly width: number;
  readonly height: number;
  readonly orientation: Orientation;
}

/**
 * How the stored rows and columns lie in the upright picture (Exif 2.3, tag
 * 0x0112): 1 as they are, 3 upside down, 6 a quarter turn clockwise, 8
 * anticlockwise; 2, 4, 5 and 7 are these mirrored.
 */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** Throws `picture-empty`, `photo-unknown-kind`, `picture-truncated` or `picture-broken`. */
export function readPictureHeader(bytes: Uint8Array): PictureHeader {
  if (bytes.length === 0) throw problemError('picture-empty', {});
  if (begins(bytes, [0x89, 0x50, 0x4e, 0x47])) return pngHeader(bytes);
  if (begins(bytes, [0xff, 0xd8])) return jpegHeader(bytes);
  if (begins(bytes, [0x52, 0x49, 0x46, 0x46]) && textAt(bytes, 8, 4) === 'WEBP') return webpHeader(bytes);
  throw problemError('photo-unknown-kind', {});
}

function pngHeader(bytes: Uint8Array): PictureHeader {
  if (bytes.length < 24) throw problemError('picture-truncated', { kind: 'PNG' });
  if (textAt(bytes, 12, 4) !== 'IHDR') throw problemError('picture-broken', { kind: 'PNG', damage: 'header' });
  const view = viewOf(bytes);
  return sized('PNG', view.getUint32(16), view.getUint32(20), 1);
}

/** Walks the segments of a JPEG (ITU-T T.81, annex B) up to its frame header. */
function jpegHeader(bytes: Uint8Array): PictureHeader {
  const view = viewOf(bytes);
  let orientation: Orientation = 1;
  let at = 2;
  for (;;) {
    while (bytes[at] === 0xff && bytes[at + 1] === 0xff) at++;
    if (at + 4 > bytes.length) throw problemError('picture-truncated', { kind: 'JPEG' });
    if (bytes[at] !== 0xff) throw problemError('picture-broken', { kind: 'JPEG', damage: 'header' });
    const marker = bytes[at + 1] as number;
    // Markers that stand alone: they have no length.
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {
      at += 2;
      continue;
    }
    const length = view.getUint16(at + 2);
    if (length < 2) throw problemError('picture-broken', { kind: 'JPEG', damage: 'header' });
    if (at + 2 + length > bytes.length) throw problemError('picture-truncated', { kind: 'JPEG' });
    // Frame headers are C0 … CF less the tables at C4, C8 and CC.
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      if (length < 8) throw problemError('picture-broken', { kind: 'JPEG', damage: 'header' });
      return sized('JPEG', view.getUint16(at + 7), view.getUint16(at + 5), orientation);
    }
    // A scan or the end before any frame header.
    if (marker === 0xda || marker === 0xd9) throw problemError('picture-broken', { kind: 'JPEG', damage: 'header' });
    if (marker === 0xe1) orientation = exifOrientation(bytes.subarray(at + 4, at + 2 + length)) ?? orientation;
    at += 2 + length;
  }
}

/** The orientation in an Exif segment, or null if it says none. Damaged notes are no reason to refuse a photo. */
function exifOrientation(segment: Uint8Array): Orientation | null {
  if (textAt(segment, 0, 4) !== 'Exif' || segment.length < 14) return null;
  const tiff = viewOf(segment.subarray(6));
  const isLittle = tiff.getUint16(0) === 0x4949;
  const directory = tiff.getUint32(4, isLittle);
  if (directory + 2 > tiff.byteLength) return null;
  const entries = tiff.getUint16(directory, isLittle);
  for (let entry = 0; entry < entries; entry++) {
    const at = directory + 2 + entry * 12;
    if (at + 12 > tiff.byteLength) return null;
    if (tiff.getUint16(at, isLittle) === 0x0112) {
      const value = tiff.getUint16(at + 8, isLittle);
      return value >= 1 && value <= 8 ? (value as Orientation) : null;
    }
  }
  return null;
}

/** The first chunk of a WebP: lossy, lossless or extended (RFC 9649). */
function webpHeader(bytes: Uint8Array): PictureHeader {
  if (bytes.length < 30) throw problemError('picture-truncated', { kind: 'WebP' });
  const view = viewOf(bytes);
  const low = (at: number): number => view.getUint16(at, true);
  switch (textAt(bytes, 12, 4)) {
    case 'VP8 ':
      return sized('WebP', low(26) & 0x3fff, low(28) & 0x3fff, 1);
    case 'VP8L': {
      const packed = view.getUint32(21, true);
      return sized('WebP', (packed & 0x3fff) + 1, ((packed >>> 14) & 0x3fff) + 1, 1);
    }
    case 'VP8X': {
      const three = (at: number): number => low(at) + ((bytes[at + 2] as number) << 16);
      return sized('WebP', three(24) + 1, three(27) + 1, 1);
    }
    default:
      throw problemError('picture-broken', { kind: 'WebP', damage: 'header' });
  }
}

function sized(kind: PictureHeader['kind'], width: number, height: number, orientation: Orientation): PictureHeader {
  if (width === 0 || height === 0) throw problemError('picture-broken', { kind, damage: 'header' });
  return { kind, width, height, orientation };
}

function begins(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

function textAt(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length));
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
