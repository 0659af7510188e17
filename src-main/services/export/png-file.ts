/**
 * Pixels as the bytes of a PNG (ISO/IEC 15948), packed by the platform's own
 * deflate: one in JavaScript takes many times as long.
 *
 * A chart has few colours, and most of its lines of pixels are the line above
 * once more. They are not looked at pixel by pixel, and pack to next to nothing.
 */
import { crc32, deflateSync } from 'node:zlib';

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opacity of each pixel. All are opaque, so opacity is not written. */
  readonly rgba: Uint8Array;
}

export interface IndexedPixels {
  readonly width: number;
  readonly height: number;
  /** A byte for each pixel: its place in the palette. */
  readonly indices: Uint8Array;
  /** The palette, at most 256 of them: `#2f6f8f`. */
  readonly colours: readonly string[];
}

/** Colour types (11.2.2). */
const TRUECOLOUR = 2;
const INDEXED = 3;
const MOST_COLOURS = 256;
const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/** A PNG of pixels, in indexed colours where 256 do; `chunks` stand between its header and its pixels. */
export function pngOf(pixels: Pixels, chunks: readonly Uint8Array[] = []): Uint8Array {
  return indexedIfFew(pixels, chunks) ?? trueColour(pixels, chunks);
}

/** A PNG of pixels that are places in a palette. */
export function indexedPng(pixels: IndexedPixels, chunks: readonly Uint8Array[] = []): Uint8Array {
  const { width, height, indices, colours } = pixels;
  const lines = filtered(height, width, {
    isAsAbove: (line) => repeats(indices, line, width),
    fill: (line, into) => into.set(indices.subarray(line * width, (line + 1) * width)),
  });
  return file(
    width,
    height,
    INDEXED,
    [...chunks, chunk('PLTE', Buffer.from(colours.map((colour) => colour.slice(1)).join(''), 'hex'))],
    lines,
  );
}

/** Null where there are more colours than a palette has. */
function indexedIfFew({ width, height, rgba }: Pixels, chunks: readonly Uint8Array[]): Uint8Array | null {
  const pixels = new DataView(rgba.buffer, rgba.byteOffset, rgba.byteLength);
  const places = new Map<number, number>();
  const palette: number[] = [];
  const lines = filtered(height, width, {
    isAsAbove: (line) => repeats(rgba, line, width * 4),
    fill: (line, into) => {
      // Neighbours are mostly alike: each colour is looked up once a run.
      let last = -1;
      let place = 0;
      for (let column = 0, at = line * width * 4; column < width; column++, at += 4) {
        const pixel = pixels.getUint32(at);
        if (pixel !== last) {
          last = pixel;
          place = places.get(pixel) ?? places.size;
          if (place === places.size) {
            if (place === MOST_COLOURS) return false;
            places.set(pixel, place);
            palette.push(pixel >>> 24, (pixel >>> 16) & 0xff, (pixel >>> 8) & 0xff);
          }
        }
        into[column] = place;
      }
      return true;
    },
  });
  return lines && file(width, height, INDEXED, [...chunks, chunk('PLTE', Buffer.from(palette))], lines);
}

function trueColour({ width, height, rgba }: Pixels, chunks: readonly Uint8Array[]): Uint8Array {
  const lines = filtered(height, width * 3, {
    isAsAbove: (line) => repeats(rgba, line, width * 4),
    fill: (line, into) => {
      for (let to = 0, at = line * width * 4; to < into.length; to += 3, at += 4) {
        into[to] = rgba[at] as number;
        into[to + 1] = rgba[at + 1] as number;
        into[to + 2] = rgba[at + 2] as number;
      }
    },
  });
  return file(width, height, TRUECOLOUR, chunks, lines);
}

interface Lines<Filled> {
  /** Whether a line is the one above it, byte by byte. */
  readonly isAsAbove: (line: number) => boolean;
  /** Puts the bytes of a line; false if it cannot. */
  readonly fill: (line: number, into: Uint8Array) => Filled;
}

/** Filter types (9.2): the bytes as they are, and their differences to those above. */
const NONE = 0;
const UP = 2;

/** The lines as a PNG packs them, each behind the kind of its filter; null if one could not be filled. */
function filtered(height: number, length: number, lines: Lines<void>): Uint8Array;
function filtered(height: number, length: number, lines: Lines<boolean>): Uint8Array | null;
function filtered(height: number, length: number, { isAsAbove, fill }: Lines<void | boolean>): Uint8Array | null {
  const filteredLines = new Uint8Array(height * (length + 1));
  let above = new Uint8Array(length);
  let bytes = new Uint8Array(length);
  for (let line = 0; line < height; line++) {
    const at = line * (length + 1);
    if (line > 0 && isAsAbove(line)) {
      // Their differences are the zeros that are there already.
      filteredLines[at] = UP;
      continue;
    }
    if (fill(line, bytes) === false) return null;
    const into = filteredLines.subarray(at + 1, at + 1 + length);
    filteredLines[at] = isPlainer(bytes, above) ? NONE : UP;
    if (filteredLines[at] === NONE) into.set(bytes);
    else for (let i = 0; i < length; i++) into[i] = (bytes[i] as number) - (above[i] as number);
    [above, bytes] = [bytes, above];
  }
  return filteredLines;
}

/** Whether a line has no more changes along it than its differences to the line above: what has few packs well. */
function isPlainer(bytes: Uint8Array, above: Uint8Array): boolean {
  let more = 0;
  let last = 0;
  let lastAbove = 0;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i] as number;
    const byteAbove = above[i] as number;
    if (byte !== last) more++;
    if (byte - byteAbove !== last - lastAbove) more--;
    last = byte;
    lastAbove = byteAbove;
  }
  return more <= 0;
}

function repeats(bytes: Uint8Array, line: number, length: number): boolean {
  const from = line * length;
  return Buffer.compare(bytes.subarray(from - length, from), bytes.subarray(from, from + length)) === 0;
}

function file(
  width: number,
  height: number,
  colourType: number,
  chunks: readonly Uint8Array[],
  lines: Uint8Array,
): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  // Eight bits a sample.
  header.set([8, colourType], 8);
  // Level 9 takes five times as long on lines that are alike, for a hundredth less.
  const packed = deflateSync(lines, { level: 8 });
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    ...chunks,
    chunk('IDAT', packed),
    chunk('IEND', new Uint8Array()),
  ]);
}

/** Length, kind, data, checksum of both (5.3). */
export function chunk(kind: 'IHDR' | 'PLTE' | 'IDAT' | 'IEND' | 'pHYs' | 'tEXt', data: Uint8Array): Uint8Array {
  const whole = Buffer.alloc(data.length + 12);
  whole.writeUInt32BE(data.length, 0);
  whole.write(kind, 4, 'latin1');
  whole.set(data, 8);
  whole.writeUInt32BE(crc32(whole.subarray(4, data.length + 8)), data.length + 8);
  return whole;
}
