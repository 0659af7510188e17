/** Colours that come from a picture are such as a project file takes: what is saved can be opened again. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourText, projectFromPicture, readMotifPicture } from '@shared/picture/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { projectFromText, projectToText } from '@shared/project/index.ts';
import { colourTextOf } from '@shared/reading/index.ts';
import { rawPng } from './pictures.ts';

const NAMES = { project: 'p', motif: 'm', yarn: (index: number) => `yarn ${index}` };

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
    const second: readonly [string, readonly number[]] = ['IHDR', [0, 0, 0, 1, 0, 0, 0, 1, 16, 2, 0, 0, 0]];
    const rows = [[0xfe, 0xff, 0xff, 0x01, 0x12, 0x34]];
    const file = rawPng({ width: 1, height: 1, depth: 8, colourType: 2, chunks: [second], rows });
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
        const rows = [[...samples.subarray(0, 2 * bytes)]];
        const project = projectFromPicture(
          readMotifPicture(rawPng({ width: 2, height: 1, depth, colourType, rows })),
          NAMES,
        );
        expect(projectFromText(projectToText(project))).toEqual(project);
      }),
    );
  });
});
