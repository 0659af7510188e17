/** Our JPEG decoder against another one (jpeg-js), on files by a third (`jpegs/README.md`). */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decode } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { outcome } from '@shared/problem/index.ts';
import { decodePhoto } from '@shared/reading/index.ts';

const folder = join(import.meta.dirname, 'jpegs');
const names = readdirSync(folder).filter((name) => name.endsWith('.jpg'));
const file = (name: string): Uint8Array => new Uint8Array(readFileSync(join(folder, name)));

/** The JPEG with each segment of that marker changed, or doubled, or taken away. */
function changed(bytes: Uint8Array, marker: number, change: (segment: number[]) => number[]): Uint8Array {
  const out: number[] = [0xff, 0xd8];
  for (let at = 2; ;) {
    const length = ((bytes[at + 2] as number) << 8) | (bytes[at + 3] as number);
    const segment = [...bytes.subarray(at, at + 2 + length)];
    out.push(...(bytes[at + 1] === marker ? change(segment) : segment));
    at += 2 + length;
    if (segment[1] === 0xda) return Uint8Array.from([...out, ...bytes.subarray(at)]);
  }
}

/**
 * A JPEG (ITU-T T.81) of 8 × 8 pixels of four inks, each even: a block is a DC
 * difference of 7 bits, 64 … 127 above or below 128, and the end of the block.
 * `transform`: of Adobe's segment, null for none.
 */
function inks(samples: readonly [number, number, number, number], transform: number | null): Uint8Array {
  const segment = (marker: number, ...body: number[]): number[] => [0xff, marker, 0, body.length + 2, ...body];
  const oneCode = (kind: number, symbol: number): number[] => [kind, 1, ...new Array<number>(15).fill(0), symbol];
  const bits = samples.map((sample) => {
    const difference = sample - 128;
    return `0${(difference < 0 ? difference + 127 : difference).toString(2).padStart(7, '0')}0`;
  });
  const packed = bits.join('').padEnd(40, '1').match(/.{8}/g) ?? [];
  return Uint8Array.from([
    ...[0xff, 0xd8],
    ...(transform === null ? [] : segment(0xee, ...Buffer.from('Adobe'), 0, 100, 0, 0, 0, 0, transform)),
    ...segment(0xdb, 0, ...new Array<number>(64).fill(8)),
    ...segment(0xc0, 8, 0, 8, 0, 8, 4, ...[1, 2, 3, 4].flatMap((id) => [id, 0x11, 0])),
    ...segment(0xc4, ...oneCode(0x00, 7), ...oneCode(0x10, 0)),
    ...segment(0xda, 4, ...[1, 2, 3, 4].flatMap((id) => [id, 0]), 0, 63, 0),
    ...packed.flatMap((byte) => (byte === '11111111' ? [255, 0] : [Number.parseInt(byte, 2)])),
    ...[0xff, 0xd9],
  ]);
}

/** From one start of scan to the next. */
function firstScanTwice(bytes: Uint8Array): Uint8Array {
  const start = Buffer.from(bytes).indexOf('ffda', 'hex');
  const end = Buffer.from(bytes).indexOf('ffc4', start, 'hex');
  const scan = bytes.subarray(start, end);
  return Uint8Array.from([...bytes.subarray(0, end), ...scan, ...bytes.subarray(end)]);
}

const codeOf = (bytes: Uint8Array): unknown => {
  const read = outcome(() => decodePhoto(bytes));
  return read.ok ? null : read.problem;
};

describe('a JPEG', () => {
  it('is tested in every layout', () => {
    expect(names).toHaveLength(11);
  });

  it.each(names)('as in %s has the pixels that another decoder finds', (name) => {
    const bytes = file(name);
    const { picture } = decodePhoto(bytes);
    // The other one does not look at the names of components.
    const isRgb = name === 'stored-as-rgb.jpg';
    const other = decode(bytes, { useTArray: true, formatAsRGBA: true, ...(isRgb ? { colorTransform: false } : {}) });
    expect([picture.width, picture.height]).toEqual([other.width, other.height]);
    // They round their transforms differently, by a step or two.
    const off = Array.from(picture.rgba, (sample, at) => Math.abs(sample - (other.data[at] as number)));
    expect(Math.max(...off)).toBeLessThanOrEqual(4);
    expect(off.reduce((sum, each) => sum + each, 0) / off.length).toBeLessThan(0.5);
  });

  // Adobe writes how much light each ink lets through (its technical note 5116, from memory): 228 × 220 / 255 = 197.
  // As YCbCr the inks are what is missing of red, green and blue (T.871, 7): 255 − (228 + 1.402 × 72) is below 0.
  it.each([
    { what: 'as light', transform: 0, rgb: [197, 43, 173] },
    { what: 'as light, by brightness and hue', transform: 2, rgb: [0, 45, 142] },
    { what: 'as ink', transform: null, rgb: [4, 28, 8] },
  ])('of four inks, kept $what, has their colour on paper', ({ transform, rgb }) => {
    const { picture } = decodePhoto(inks([228, 50, 200, 220], transform));
    expect([...picture.rgba.subarray(0, 4)]).toEqual([...rgb, 255]);
    expect(new Set(new Uint32Array(picture.rgba.slice().buffer)).size).toBe(1);
  });

  it('of four inks in passes is told how many pixels of four inks are read', () => {
    const even = inks([228, 50, 200, 220], 0);
    // 4000 × 3900 pixels in passes, the first of which brings the DC coefficients: 122,000 bytes are a bit a block.
    const larger = changed(even, 0xc0, (segment) => [
      ...[0xff, 0xc2, ...segment.slice(2, 5)],
      ...[3900 >> 8, 3900 & 255, 4000 >> 8, 4000 & 255, ...segment.slice(9)],
    ]);
    const inPasses = changed(larger, 0xda, (segment) => [...segment.slice(0, -3), 0, 0, 0]);
    const bytes = Buffer.concat([inPasses.subarray(0, -2), Buffer.alloc(122_000), inPasses.subarray(-2)]);
    // 48 · 2²⁰ coefficients are kept, four a pixel: 12.58 million pixels.
    expect(codeOf(bytes)).toMatchObject({ code: 'photo-in-passes', facts: { mostMegapixels: 12 } });
  });

  it.each<{ what: string; bytes: Uint8Array; problem: object }>([
    {
      what: 'a second frame header',
      bytes: changed(file('full-colour.jpg'), 0xc0, (segment) => [...segment, ...segment]),
      problem: { code: 'picture-broken', facts: { damage: 'second-header' } },
    },
    {
      what: 'a marker that defines the height anew',
      bytes: changed(file('full-colour.jpg'), 0xda, (segment) => [0xff, 0xdc, 0, 4, 40, 0, ...segment]),
      problem: { code: 'picture-broken', facts: { damage: 'second-header' } },
    },
    {
      what: 'millions of pixels in a few hundred bytes',
      bytes: changed(file('grey.jpg'), 0xc0, (segment) => [...segment.slice(0, 5), 28, 0, 32, 0, ...segment.slice(9)]),
      problem: { code: 'picture-truncated' },
    },
    {
      what: 'a scan of a component that is not there',
      bytes: changed(file('grey.jpg'), 0xda, (segment) => [...segment.slice(0, 5), 99, ...segment.slice(6)]),
      problem: { code: 'picture-broken' },
    },
    {
      what: 'no table of codes',
      bytes: changed(file('grey.jpg'), 0xc4, () => []),
      problem: { code: 'picture-broken', facts: { damage: 'pixels' } },
    },
    {
      what: 'no table of steps',
      bytes: changed(file('grey.jpg'), 0xdb, () => []),
      problem: { code: 'picture-broken', facts: { damage: 'pixels' } },
    },
    {
      what: 'the first scan of the progression twice',
      bytes: firstScanTwice(file('progressive-grey.jpg')),
      problem: { code: 'picture-broken', facts: { damage: 'order' } },
    },
  ])('with $what is refused', ({ bytes, problem }) => {
    expect(codeOf(bytes)).toMatchObject(problem);
  });
});
