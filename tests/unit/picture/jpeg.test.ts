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
