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
  const lines = filtered({ width, height, bytes: indices, size: 1 }, 1, (first, last, into) => {
    into.set(indices.subarray(first, last));
  });
  const palette = Buffer.from(colours.map((colour) => colour.slice(1)).join(''), 'hex');
  return file(width, height, INDEXED, [...chunks, chunk('PLTE', palette)], lines);
}

/** Null where there are more colours than a palette has. */
function indexedIfFew({ width, height, rgba }: Pixels, chunks: readonly Uint8Array[]): Uint8Array | null {
  const pixels = wordsOf(rgba);
  const places = new Map<number, number>();
  const palette: number[] = [];
  const lines = filtered({ width, height, bytes: rgba, size: 4 }, 1, (first, last, into) => {
    // Neighbours are mostly alike: each colour is looked up once a run.
    let before = ~(pixels[first] as number);
    let place = 0;
    for (let at = first; at < last; at++) {
      const pixel = pixels[at] as number;
      if (pixel !== before) {
        before = pixel;
        place = places.get(pixel) ?? places.size;
        if (place === places.size) {
          if (place === MOST_COLOURS) return false;
          places.set(pixel, place);
          palette.push(...rgba.subarray(at * 4, at * 4 + 3));
        }
      }
      into[at - first] = place;
    }
    return true;
  });
  return lines && file(width, height, INDEXED, [...chunks, chunk('PLTE', Buffer.from(palette))], lines);
}

/** Four bytes each as one number; with a sign, which the processor compares as it is. */
function wordsOf(bytes: Uint8Array): Int32Array {
  // A view of words begins at a whole one.
  const { buffer, byteOffset, byteLength } = bytes.byteOffset % 4 === 0 ? bytes : new Uint8Array(bytes);
  return new Int32Array(buffer, byteOffset, byteLength / 4);
}

function trueColour({ width, height, rgba }: Pixels, chunks: readonly Uint8Array[]): Uint8Array {
  const lines = filtered({ width, height, bytes: rgba, size: 4 }, 3, (first, last, into) => {
    for (let to = 0, at = first * 4; at < last * 4; to += 3, at += 4) {
      into[to] = rgba[at] as number;
      into[to + 1] = rgba[at + 1] as number;
      into[to + 2] = rgba[at + 2] as number;
    }
  });
  return file(width, height, TRUECOLOUR, chunks, lines);
}

/** Pixels as they are given, so many bytes each. */
interface Source {
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
  readonly size: number;
}

/** Puts the bytes of the pixels from `first` to before `last`, all of one line; false if it cannot. */
type Fill<Filled> = (first: number, last: number, into: Uint8Array) => Filled;

/** Filter types (9.2): the bytes as they are, and their differences to those above. */
const NONE = 0;
const UP = 2;

/** The lines as a PNG packs them, each behind the kind of its filter, with `size` bytes a pixel; null if one could not be filled. */
function filtered(source: Source, size: number, fill: Fill<void>): Uint8Array;
function filtered(source: Source, size: number, fill: Fill<boolean>): Uint8Array | null;
function filtered(source: Source, size: number, fill: Fill<void | boolean>): Uint8Array | null {
  const { width, height } = source;
  const length = width * size;
  const filteredLines = new Uint8Array(height * (length + 1));
  // Where a line is as the one above, its bytes and the zeros of its differences are there already.
  const words = new Int32Array(Math.ceil(length / 4));
  const bytes = new Uint8Array(words.buffer, 0, length);
  const above = new Uint8Array(length);
  for (let line = 0; line < height; line++) {
    const at = line * (length + 1);
    const into = filteredLines.subarray(at + 1, at + 1 + length);
    let changes = 0;
    for (const [from, to] of line === 0 ? [[0, width] as const] : changedParts(source, line)) {
      const [first, last] = [from * size, to * size];
      above.set(bytes.subarray(first, last), first);
      if (fill(line * width + from, line * width + to, bytes.subarray(first, last)) === false) return null;
      changes += putDifferences(bytes, above, into, first, last);
    }
    // What has few changes along it packs well.
    const isPlain = changes > 0 && changes >= changesAlong(bytes, words);
    filteredLines[at] = isPlain ? NONE : UP;
    if (isPlain) into.set(bytes);
  }
  return filteredLines;
}

/** A part is looked at whole that has no more pixels than this. */
const PART = 128;

/** From where to where a line is not as the one above, in pixels, in order. */
function changedParts({ bytes, width, size }: Source, line: number): readonly (readonly [from: number, to: number])[] {
  const parts: [number, number][] = [];
  const start = line * width * size;
  const compared = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const look = (from: number, to: number): void => {
    const [first, last] = [start + from * size, start + to * size];
    const above = width * size;
    if (compared.compare(compared, first - above, last - above, first, last) === 0) return;
    if (to - from <= PART) {
      const before = parts.at(-1);
      if (before?.[1] === from) before[1] = to;
      else parts.push([from, to]);
      return;
    }
    const middle = (from + to) >> 1;
    look(from, middle);
    look(middle, to);
  };
  look(0, width);
  return parts;
}

/** Puts the differences of a part to what is above it, and tells how often one is not that before it, with zeros around. */
function putDifferences(bytes: Uint8Array, above: Uint8Array, into: Uint8Array, first: number, last: number): number {
  let changes = 0;
  let before = 0;
  for (let i = first; i < last; i++) {
    const difference = (bytes[i] as number) - (above[i] as number);
    into[i] = difference;
    if (difference !== before) changes++;
    before = difference;
  }
  return before === 0 ? changes : changes + 1;
}

/** How often a byte of a line is not the one before it; four that are all as the one before are one look. */
function changesAlong(bytes: Uint8Array, words: Int32Array): number {
  let changes = 0;
  let before = 0;
  for (let word = 0; word < words.length; word++) {
    if (words[word] === Math.imul(before, 0x01010101)) continue;
    const end = Math.min(bytes.length, word * 4 + 4);
    for (let i = word * 4; i < end; i++) {
      const byte = bytes[i] as number;
      if (byte !== before) changes++;
      before = byte;
    }
  }
  return changes;
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
