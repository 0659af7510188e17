/**
 * Reads a PNG picture of any depth and colour type.
 *
 * The chunks are walked first, so that a size past all sense, a file that ends
 * early and a damaged one are told apart before anything is unpacked. Only the
 * chunks that make the pixels go to the decoder: a damaged comment or colour
 * profile does not stop a picture. Colours are taken as stored (no gamma, no
 * profile); what is see-through is laid on white.
 */
import { decode, type DecodedPng } from 'fast-png';
import { problemError, ProblemError, type PictureDamage } from '../problem/index.ts';
import { assertMotifSize, WHITE, type Pixels } from './pixels.ts';

const KIND = 'PNG';
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEADER_LENGTH = 13;
const PIXEL_CHUNKS = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND']);

/** Samples in a pixel by colour type (PNG, ISO/IEC 15948). */
const CHANNELS = new Map([
  [0, 1],
  [2, 3],
  [3, 1],
  [4, 2],
  [6, 4],
]);

interface Header {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly colourType: number;
  readonly isInterlaced: boolean;
}

/** True for bytes that begin as a PNG does, whole or cut or changed after the fourth. */
export function isPng(bytes: Uint8Array): boolean {
  return bytes.length >= 4 && SIGNATURE.slice(0, 4).every((byte, index) => bytes[index] === byte);
}

/**
 * Throws `picture-truncated`, `picture-broken` or `picture-interlaced`, and
 * what `assertSize` throws for the size that is declared: for a motif
 * `picture-too-large`.
 */
export function readPng(bytes: Uint8Array, assertSize = assertMotifSize): Pixels {
  const header = readHeader(bytes);
  assertSize(header.width, header.height);
  // The decoder takes the pixels of each pass for whole bytes and would garble them.
  if (header.isInterlaced && header.depth < 8) throw problemError('picture-interlaced', { depth: header.depth });
  const chunks = pixelChunks(bytes, header);
  return opaquePixels(unpack(chunks), header);
}

function readHeader(bytes: Uint8Array): Header {
  if (bytes.length < SIGNATURE.length) throw problemError('picture-truncated', { kind: KIND });
  if (SIGNATURE.some((byte, index) => bytes[index] !== byte)) throw broken('signature');
  if (bytes.length < SIGNATURE.length + 8 + HEADER_LENGTH + 4) throw problemError('picture-truncated', { kind: KIND });
  const view = viewOf(bytes);
  if (view.getUint32(8) !== HEADER_LENGTH || chunkName(bytes, 12) !== 'IHDR') throw broken('header');
  const header: Header = {
    width: view.getUint32(16),
    height: view.getUint32(20),
    depth: view.getUint8(24),
    colourType: view.getUint8(25),
    isInterlaced: view.getUint8(28) === 1,
  };
  if (header.width === 0 || header.height === 0 || !CHANNELS.has(header.colourType)) throw broken('header');
  return header;
}

/** The file again, with nothing but the chunks that make the pixels. */
function pixelChunks(bytes: Uint8Array, header: Header): Uint8Array {
  const view = viewOf(bytes);
  const kept: Uint8Array[] = [bytes.subarray(0, SIGNATURE.length)];
  let packed = 0;
  let offset = SIGNATURE.length;
  for (;;) {
    if (offset + 12 > bytes.length) throw problemError('picture-truncated', { kind: KIND });
    const length = view.getUint32(offset);
    const name = chunkName(bytes, offset + 4);
    const end = offset + 12 + length;
    if (!/^[A-Za-z]{4}$/.test(name)) throw broken('chunk');
    if (end > bytes.length) throw problemError('picture-truncated', { kind: KIND });
    if (name === 'IDAT') packed += length;
    if (PIXEL_CHUNKS.has(name)) kept.push(bytes.subarray(offset, end));
    if (name === 'IEND') break;
    offset = end;
  }
  if (packed === 0) throw broken('pixels');
  // Packing makes pixels smaller, never much larger. What claims otherwise would unpack to more than the header says.
  if (packed > 2 * unpackedBytes(header) + 65536) throw broken('pixels');
  return joined(kept);
}

/** Bytes of the pixels before packing, each row with its filter byte. */
function unpackedBytes({ width, height, depth, colourType }: Header): number {
  return height * (1 + Math.ceil((width * depth * (CHANNELS.get(colourType) as number)) / 8));
}

function unpack(chunks: Uint8Array): DecodedPng {
  try {
    return decode(chunks, { checkCrc: true });
  } catch (error) {
    // Every chunk is there in full, so whatever is wrong is inside one of them.
    if (error instanceof ProblemError) throw error;
    throw broken(/CRC/.test((error as Error).message) ? 'checksum' : 'pixels');
  }
}

/** One opaque colour a pixel: samples of any depth brought to 8 bits, laid on white where see-through. */
function opaquePixels(png: DecodedPng, { colourType, depth }: Header): Pixels {
  const { width, height, channels, palette, transparency } = png;
  const samples = sampleReader(png);
  const most = 2 ** depth - 1;
  const colours = new Uint32Array(width * height);
  let pixel = 0;
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const sample = (channel: number): number => samples(row, column * channels + channel);
      let colour: number;
      if (colourType === 3) {
        const entry = palette?.[sample(0)];
        if (!entry) throw broken('palette');
        colour = onWhite(entry[0] as number, entry[1] as number, entry[2] as number, entry[3] ?? 255, 255);
      } else {
        const isGrey = channels < 3;
        const red = sample(0);
        const green = isGrey ? red : sample(1);
        const blue = isGrey ? red : sample(2);
        const hasAlpha = channels === 2 || channels === 4;
        const isMarkedClear =
          transparency !== undefined &&
          red === transparency[0] &&
          (isGrey || (green === transparency[1] && blue === transparency[2]));
        colour = isMarkedClear ? WHITE : onWhite(red, green, blue, hasAlpha ? sample(channels - 1) : most, most);
      }
      colours[pixel++] = colour;
    }
  }
  return { width, height, colours };
}

/** Reads sample `index` of a row; samples of fewer than 8 bits are packed, the first in the highest bits. */
function sampleReader({ data, depth, width, channels }: DecodedPng): (row: number, index: number) => number {
  if (depth >= 8) return (row, index) => data[row * width * channels + index] as number;
  const rowBytes = Math.ceil((width * channels * depth) / 8);
  const mask = 2 ** depth - 1;
  return (row, index) => {
    const bit = index * depth;
    const byte = data[row * rowBytes + (bit >> 3)] as number;
    return (byte >> (8 - depth - (bit & 7))) & mask;
  };
}

/** 0xrrggbb of samples 0 … `most` laid on white. */
function onWhite(red: number, green: number, blue: number, alpha: number, most: number): number {
  const laid = (sample: number): number => Math.round((255 * (sample * alpha + most * (most - alpha))) / (most * most));
  return (laid(red) << 16) | (laid(green) << 8) | laid(blue);
}

function broken(damage: PictureDamage): ProblemError {
  return problemError('picture-broken', { kind: KIND, damage });
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function chunkName(bytes: Uint8Array, offset: number): string {
  return String.fromCharCode(...bytes.subarray(offset, offset + 4));
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let offset = 0;
  for (const part of parts) {
    whole.set(part, offset);
    offset += part.length;
  }
  return whole;
}
