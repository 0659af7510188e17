/** What a WebP and a BMP say of themselves, whose pixels are left to the browser. */
import { describe, expect, it } from 'vitest';
import { readBmpSize, readWebpSize } from '@shared/picture/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { bytesOf } from './pictures.ts';

const word = (value: number): number[] => [value & 255, (value >> 8) & 255, (value >> 16) & 255, value >>> 24];
const problemIn = (read: () => unknown): unknown => {
  const made = outcome(read);
  return made.ok ? null : made.problem;
};

/** RFC 9649, 2.3 and 2.4: name, length, body, filled up to an even length. */
function webp(...chunks: readonly (readonly [name: string, body: readonly number[]])[]): Uint8Array {
  const body = chunks.flatMap(([name, held]) => [
    ...bytesOf(name),
    ...word(held.length),
    ...held,
    ...(held.length % 2 === 1 ? [0] : []),
  ]);
  return Uint8Array.from([...bytesOf('RIFF'), ...word(body.length + 4), ...bytesOf('WEBP'), ...body]);
}

/** RFC 6386, 9.1: 14 bits each of width and height after the start code, two bits of scale above each. */
const lossy = (width: number, height: number): readonly [string, readonly number[]] => [
  'VP8 ',
  [0, 0, 0, 0x9d, 0x01, 0x2a, width & 255, (width >> 8) | 0x40, height & 255, (height >> 8) | 0x80],
];
/** RFC 9649, 3.4: 14 bits each, less one. */
const lossless = (width: number, height: number): readonly [string, readonly number[]] => [
  'VP8L',
  [0x2f, ...word((width - 1) | ((height - 1) << 14))],
];
/** RFC 9649, 2.7: 24 bits each, less one. */
const canvas = (width: number, height: number, flags = 0): readonly [string, readonly number[]] => [
  'VP8X',
  [flags, 0, 0, 0, ...word(width - 1).slice(0, 3), ...word(height - 1).slice(0, 3)],
];

describe('a WebP', () => {
  it.each([
    { kind: 'lossy', bytes: webp(lossy(800, 600)) },
    { kind: 'lossless', bytes: webp(lossless(800, 600)) },
    { kind: 'extended', bytes: webp(canvas(800, 600), ['ICCP', [1]], ['ALPH', [0]], lossy(800, 600), ['EXIF', [1]]) },
  ])('that is $kind states its size', ({ bytes }) => {
    expect(readWebpSize(bytes)).toEqual({ width: 800, height: 600 });
  });

  it('is as large as its fields can say', () => {
    expect(readWebpSize(webp(lossy(16_383, 1)))).toEqual({ width: 16_383, height: 1 });
    expect(readWebpSize(webp(lossless(16_384, 16_384)))).toEqual({ width: 16_384, height: 16_384 });
  });

  const truncated = { code: 'picture-truncated' };
  const header = { code: 'picture-broken', facts: { damage: 'header' } };
  const second = { code: 'picture-broken', facts: { damage: 'second-header' } };
  it.each([
    { what: 'a canvas of another size', bytes: webp(canvas(800, 601), lossy(800, 600)), problem: second },
    { what: 'two pictures', bytes: webp(canvas(8, 8), lossy(8, 8), lossy(8, 8)), problem: second },
    { what: 'a second picture behind a plain one', bytes: webp(lossy(8, 8), lossy(9, 9)), problem: second },
    { what: 'no picture', bytes: webp(canvas(8, 8), ['EXIF', [1, 2]]), problem: header },
    { what: 'a picture that is not the first part', bytes: webp(['EXIF', [1, 2]], lossy(8, 8)), problem: header },
    { what: 'a canvas behind the picture', bytes: webp(lossy(8, 8), canvas(8, 8)), problem: header },
    { what: 'no width', bytes: webp(lossy(0, 8)), problem: header },
    { what: 'no start code', bytes: webp(['VP8 ', [0, 0, 0, 1, 2, 3, 8, 0, 8, 0]]), problem: header },
    { what: 'a version to come', bytes: webp(['VP8L', [0x2f, 0, 0, 0, 0x20]]), problem: header },
    { what: 'motion', bytes: webp(canvas(8, 8, 2), lossy(8, 8)), problem: { code: 'picture-animated' } },
    { what: 'frames', bytes: webp(canvas(8, 8), ['ANMF', [1, 2]]), problem: { code: 'picture-animated' } },
    { what: 'its end missing', bytes: webp(lossy(8, 8)).subarray(0, 27), problem: truncated },
    { what: 'too short a picture', bytes: webp(['VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a, 8, 0, 8]]), problem: truncated },
  ])('with $what is refused', ({ bytes, problem }) => {
    expect(problemIn(() => readWebpSize(bytes))).toMatchObject(problem);
  });
});

interface Bmp {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly compression?: number;
  /** Bytes from the beginning of the pixels on. */
  readonly pixels: number;
  readonly colours?: number;
  readonly headerLength?: number;
}

/** BITMAPFILEHEADER and BITMAPINFOHEADER as Microsoft describes them. */
function bmp({ width, height, depth, compression = 0, pixels, colours = 0, headerLength = 40 }: Bmp): Uint8Array {
  const table = depth <= 8 ? 4 * (colours || 2 ** depth) : 0;
  const start = 14 + headerLength + table;
  return Uint8Array.from([
    ...bytesOf('BM'),
    ...word(start + pixels),
    ...word(0),
    ...word(start),
    ...word(headerLength),
    ...word(width),
    ...word(height),
    ...[1, 0, depth, 0],
    ...word(compression),
    ...word(0),
    ...word(0),
    ...word(0),
    ...word(colours),
    ...new Array<number>(headerLength - 36 + table + pixels).fill(0),
  ]);
}

describe('a BMP', () => {
  // Rows are filled up to whole words: 5 pixels of 24 bits are 15 bytes in 16, 33 of one bit 5 bytes in 8.
  it.each([
    { what: '24 bits', given: { width: 5, height: 4, depth: 24, pixels: 64 }, size: [5, 4] },
    { what: 'rows from the top', given: { width: 5, height: -4, depth: 24, pixels: 64 }, size: [5, 4] },
    { what: 'one bit', given: { width: 33, height: 2, depth: 1, pixels: 16 }, size: [33, 2] },
    { what: 'a short palette', given: { width: 3, height: 1, depth: 8, colours: 2, pixels: 4 }, size: [3, 1] },
    { what: 'a longer header', given: { width: 1, height: 1, depth: 32, headerLength: 124, pixels: 4 }, size: [1, 1] },
    // Two runs of at most 255 pixels in each row.
    { what: 'runs', given: { width: 300, height: 2, depth: 8, compression: 1, pixels: 8 }, size: [300, 2] },
  ])('of $what states its size', ({ given, size: [width, height] }) => {
    const bytes = bmp(given);
    expect(readBmpSize(bytes)).toEqual({ width, height });
    expect(problemIn(() => readBmpSize(bytes.subarray(0, -5)))).toMatchObject({ code: 'picture-truncated' });
  });

  it.each([
    { what: 'no width', given: { width: 0, height: 4, depth: 24, pixels: 64 } },
    { what: 'no height', given: { width: 4, height: 0, depth: 24, pixels: 64 } },
    { what: 'a depth that there is not', given: { width: 4, height: 4, depth: 7, pixels: 64 } },
    { what: 'runs of 24 bits', given: { width: 4, height: 4, depth: 24, compression: 1, pixels: 64 } },
    { what: 'more colours than its depth has', given: { width: 4, height: 4, depth: 4, colours: 17, pixels: 64 } },
    { what: 'a picture of another kind in it', given: { width: 4, height: 4, depth: 24, compression: 4, pixels: 64 } },
  ])('with $what is refused', ({ given }) => {
    expect(problemIn(() => readBmpSize(bmp(given)))).toMatchObject({ code: 'picture-broken' });
  });

  it('whose pixels begin inside its header is refused', () => {
    const bytes = bmp({ width: 5, height: 4, depth: 24, pixels: 64 });
    bytes.set(word(20), 10);
    expect(problemIn(() => readBmpSize(bytes))).toMatchObject({ code: 'picture-broken' });
  });
});
