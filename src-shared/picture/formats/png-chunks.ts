/**
 * The chunks of a PNG (ISO/IEC 15948, Portable Network Graphics), walked from
 * the signature to IEND before anything is unpacked.
 *
 * What contradicts itself is refused: a second header, a palette where none
 * may be, chunks out of order. So the size that is checked here is the size
 * that every decoder finds. Notes (iCCP, zTXt, iTXt) are not used, but whoever
 * else reads the file may unpack them, so what comes out of them is bounded too;
 * a note that makes no sense is let be.
 */
import { crc32 } from '../../checksum/index.ts';
import { problemError, type ProblemError } from '../../problem/index.ts';
import type { PictureDamage } from '../problems.ts';
import { beginsWith, nameAt, viewOf } from './bytes.ts';
import { unpack } from './inflate.ts';

const KIND = 'PNG';
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEADER_LENGTH = 13;

/** Clause 11.2.2, table 11.1: the depths that each colour type may have, and its samples in a pixel. */
const COLOUR_TYPES: Readonly<Record<number, { readonly depths: readonly number[]; readonly channels: number }>> = {
  0: { depths: [1, 2, 4, 8, 16], channels: 1 },
  2: { depths: [8, 16], channels: 3 },
  3: { depths: [1, 2, 4, 8], channels: 1 },
  4: { depths: [8, 16], channels: 2 },
  6: { depths: [8, 16], channels: 4 },
};

/** What all notes of a file may unpack to together: the longest colour profiles have half of it. */
const MOST_UNPACKED_NOTES = 8 * 1024 * 1024;

/** Each part takes time and room however short it is; 64 MB in the usual parts of 8 KB are 8000. */
const MOST_CHUNKS = 100_000;
const MOST_NOTES = 1000;

export interface PngHeader {
  readonly width: number;
  readonly height: number;
  /** Bits in a sample. */
  readonly depth: number;
  readonly colourType: number;
  /** Samples in a pixel. */
  readonly channels: number;
  readonly isInterlaced: boolean;
}

export interface PngChunks {
  readonly header: PngHeader;
  /** Three bytes a colour, or null. */
  readonly palette: Uint8Array | null;
  readonly transparency: Uint8Array | null;
  /** Where the IDAT chunks lie, in order; their bodies are one packed stream. */
  readonly pixels: readonly Chunk[];
}

/** From its length to the end of its checksum. */
export interface Chunk {
  readonly at: number;
  readonly end: number;
}

/** The bytes between a chunk's name and its checksum. */
export function bodyOf(bytes: Uint8Array, { at, end }: Chunk): Uint8Array {
  return bytes.subarray(at + 8, end - 4);
}

/** True for bytes that begin as a PNG does, whole or cut or changed after the fourth. */
export function isPng(bytes: Uint8Array): boolean {
  return bytes.length >= 4 && beginsWith(bytes, SIGNATURE.slice(0, 4));
}

/** Throws `picture-truncated`, `picture-broken` or `picture-animated`. Checksums of pixels are left to who unpacks them. */
export function readPngChunks(bytes: Uint8Array): PngChunks {
  const header = readHeader(bytes);
  const view = viewOf(bytes);
  const pixels: Chunk[] = [];
  let palette: Uint8Array | null = null;
  let transparency: Uint8Array | null = null;
  let room = MOST_UNPACKED_NOTES;
  let notes = 0;
  let chunks = 0;
  let last = 'IHDR';
  for (let at = SIGNATURE.length + 12 + HEADER_LENGTH; ;) {
    if (at + 12 > bytes.length) throw problemError('picture-truncated', { kind: KIND });
    const name = nameAt(bytes, at + 4);
    if (!/^[A-Za-z]{4}$/.test(name)) throw brokenPng('chunk');
    const end = at + 12 + view.getUint32(at);
    if (end > bytes.length) throw problemError('picture-truncated', { kind: KIND });
    if (++chunks > MOST_CHUNKS) throw brokenPng('order');
    const chunk = { at, end };
    const body = bodyOf(bytes, chunk);
    const isBeforePixels = pixels.length === 0;
    // Chunks with a capital are needed to show the picture (5.4).
    if (name < 'a' && name !== 'IDAT') assertChecksum(bytes, chunk);
    switch (name) {
      case 'PLTE':
        if (palette !== null || transparency !== null || !isBeforePixels || !fitsPalette(body, header))
          throw brokenPng('palette');
        palette = body;
        break;
      case 'tRNS':
        if (transparency !== null || !isBeforePixels || !fitsTransparency(body, header, palette))
          throw brokenPng('palette');
        assertChecksum(bytes, chunk);
        transparency = body;
        break;
      case 'IDAT':
        // One stream: nothing may stand between its parts (5.6).
        if (!isBeforePixels && last !== 'IDAT') throw brokenPng('order');
        pixels.push(chunk);
        break;
      case 'IEND':
        if (body.length > 0) throw brokenPng('order');
        if (header.colourType === 3 && palette === null) throw brokenPng('palette');
        if (pixels.every((part) => bodyOf(bytes, part).length === 0)) throw brokenPng('pixels');
        return { header, palette, transparency, pixels };
      case 'acTL':
        throw problemError('picture-animated', { kind: KIND });
      case 'iCCP':
      case 'zTXt':
      case 'iTXt':
        if (++notes > MOST_NOTES) throw brokenPng('note');
        room -= lengthUnpacked(name, body, room);
        break;
      default:
        // A second header, or a part that is needed and not known.
        if (name < 'a') throw brokenPng(name === 'IHDR' ? 'second-header' : 'chunk');
    }
    last = name;
    at = end;
  }
}

function readHeader(bytes: Uint8Array): PngHeader {
  if (bytes.length < SIGNATURE.length) throw problemError('picture-truncated', { kind: KIND });
  if (!beginsWith(bytes, SIGNATURE)) throw brokenPng('signature');
  const end = SIGNATURE.length + 12 + HEADER_LENGTH;
  if (bytes.length < end) throw problemError('picture-truncated', { kind: KIND });
  const view = viewOf(bytes);
  if (view.getUint32(8) !== HEADER_LENGTH || nameAt(bytes, 12) !== 'IHDR') throw brokenPng('header');
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  const [depth, colourType, packing, filtering, interlacing] = bytes.subarray(24, 29) as unknown as number[];
  const type = COLOUR_TYPES[colourType as number];
  const isSize = width >= 1 && width < 2 ** 31 && height >= 1 && height < 2 ** 31;
  if (!isSize || !type?.depths.includes(depth as number)) throw brokenPng('header');
  if (packing !== 0 || filtering !== 0 || (interlacing as number) > 1) throw brokenPng('header');
  assertChecksum(bytes, { at: SIGNATURE.length, end });
  const { channels } = type;
  return {
    width,
    height,
    depth: depth as number,
    colourType: colourType as number,
    channels,
    isInterlaced: interlacing === 1,
  };
}

function fitsPalette(body: Uint8Array, { colourType, depth }: PngHeader): boolean {
  const colours = body.length / 3;
  if (colourType === 0 || colourType === 4 || !Number.isInteger(colours) || colours === 0) return false;
  return colours <= (colourType === 3 ? 2 ** depth : 256);
}

function fitsTransparency(body: Uint8Array, { colourType }: PngHeader, palette: Uint8Array | null): boolean {
  if (colourType === 0) return body.length === 2;
  if (colourType === 2) return body.length === 6;
  return colourType === 3 && palette !== null && body.length <= palette.length / 3;
}

/** Throws `picture-broken` if the chunk's last four bytes are not the checksum of its name and body (5.3). */
export function assertChecksum(bytes: Uint8Array, { at, end }: Chunk): void {
  if (crc32(bytes.subarray(at + 4, end - 4)) !== viewOf(bytes).getUint32(end - 4)) throw brokenPng('checksum');
}

/** Bytes that a note unpacks to. Throws `picture-broken` for more than `most`. */
function lengthUnpacked(name: string, body: Uint8Array, most: number): number {
  const stream = packedNote(name, body);
  if (stream === null) return 0;
  let length = 0;
  const unpacked = unpack([stream], most, (piece) => (length += piece.length));
  if (unpacked === 'too-much') throw brokenPng('note');
  return length;
}

/** The zlib stream in a note (11.3.2.3, 11.3.3.3 and 11.3.3.4), or null if there is none. */
function packedNote(name: string, body: Uint8Array): Uint8Array | null {
  const afterNull = (from: number): number => {
    const at = body.indexOf(0, from);
    return at < 0 ? body.length : at + 1;
  };
  const keyword = afterNull(0);
  // Keyword, null, method; in iTXt a flag before the method, then language and translated keyword.
  if (name !== 'iTXt') return body.subarray(keyword + 1);
  return body[keyword] === 1 ? body.subarray(afterNull(afterNull(keyword + 2))) : null;
}

export function brokenPng(damage: PictureDamage): ProblemError {
  return problemError('picture-broken', { kind: KIND, damage });
}
