/** Colours that come from a picture are such as a project file takes: what is saved can be opened again. */
import { crc32, deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourText, projectFromPicture, readMotifPicture } from '@shared/picture/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { projectFromText, projectToText } from '@shared/project/index.ts';
import { colourTextOf } from '@shared/reading/index.ts';

const NAMES = { project: 'p', motif: 'm', yarn: (index: number) => `yarn ${index}` };

/** A chunk of a PNG (ISO/IEC 15948, 5.3): length, name, data, and the check over name and data. */
function chunk(name: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}

/** Width, height, depth and colour type, no more (11.2.2). */
function header(width: number, height: number, depth: number, colourType: number): Buffer {
  const data = Buffer.alloc(13);
  data.writeUInt32BE(width, 0);
  data.writeUInt32BE(height, 4);
  data.set([depth, colourType], 8);
  return chunk('IHDR', data);
}

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const END = chunk('IEND', new Uint8Array());

describe('a colour', () => {
  it.each([
    [0, '#000000'],
    [0xffffff, '#ffffff'],
    [0x5d7591, '#5d7591'],
  ])('%i is written %s', (colour, text) => expect(colourText(colour)).toBe(text));

  it.each([0xfeffff01, 0x1000000, -1, 0.5, NaN])('is not made of %d', (number) => {
    expect(() => colourText(number)).toThrow(RangeError);
  });

  it('is not made of what the eye has no name for', () => {
    expect(() => colourTextOf([NaN, 0, 0])).toThrow(RangeError);
    expect(() => colourTextOf([0.5, Infinity, 0])).toThrow(RangeError);
    expect(colourTextOf([2, 1, -1])).toMatch(/^#[0-9a-f]{6}$/);
  });
});

describe('a picture', () => {
  // The samples of a picture with two headers were scaled by the first and read by the second.
  it('that says twice what it is comes to no project that could not be opened again', () => {
    const row = Buffer.from([0, 0xfe, 0xff, 0xff, 0x01, 0x12, 0x34]);
    const file = Buffer.concat([
      SIGNATURE,
      header(1, 1, 8, 2),
      header(1, 1, 16, 2),
      chunk('IDAT', deflateSync(row)),
      END,
    ]);
    const read = outcome(() => readMotifPicture(file));
    if (read.ok) projectFromText(projectToText(projectFromPicture(read.value, NAMES)));
    else expect(read.problem.code).toBe('picture-broken');
  });

  it('of any samples comes to a project that can be opened again', () => {
    const kinds = [
      { depth: 8, colourType: 2, bytes: 3 },
      { depth: 16, colourType: 2, bytes: 6 },
      { depth: 16, colourType: 0, bytes: 2 },
      { depth: 8, colourType: 6, bytes: 4 },
      { depth: 16, colourType: 6, bytes: 8 },
    ];
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.uint8Array({ minLength: 16, maxLength: 16 }), (kind, samples) => {
        const { depth, colourType, bytes } = kind;
        const row = Buffer.concat([Buffer.from([0]), samples.subarray(0, 2 * bytes)]);
        const parts = [SIGNATURE, header(2, 1, depth, colourType), chunk('IDAT', deflateSync(row)), END];
        const project = projectFromPicture(readMotifPicture(Buffer.concat(parts)), NAMES);
        expect(projectFromText(projectToText(project))).toEqual(project);
      }),
    );
  });
});
