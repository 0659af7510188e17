import { describe, expect, it } from 'vitest';
import { gridToText } from '@shared/grid/index.ts';
import { ProblemError, type ProblemCode } from '@shared/problem/index.ts';
import {
  finish,
  pictureToCells,
  rowsFor,
  stitchesFor,
  upright,
  type Picture,
  type PictureOptions,
} from '@shared/reading/index.ts';
import type { Orientation } from '@shared/picture/index.ts';
import { fromLinear, LINEAR } from '../../../src-shared/reading/oklab.ts';
import { words } from '@shared/words/index.ts';

function pictureOf(width: number, height: number, colour: (x: number, y: number) => readonly number[]): Picture {
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) rgba.set(colour(x, y), (y * width + x) * 4);
  return { width, height, rgba };
}

const plain: PictureOptions = {
  crop: null,
  stitches: 8,
  rows: 8,
  yarns: 2,
  reduction: 'mean',
  dithering: false,
};

function codeOf(run: () => unknown): ProblemCode | null {
  try {
    run();
    return null;
  } catch (thrown) {
    return thrown instanceof ProblemError ? thrown.problem.code : 'unexpected';
  }
}

const NAVY = [30, 40, 90];
const CREAM = [240, 230, 210];

describe('a picture turned into cells', () => {
  it('keeps its proportion when knitted: 28 × 40 stitches take 1.43 times as many rows', () => {
    const gauge = { stitches: 28, rows: 40 };
    expect(rowsFor(100, 100, 70, gauge)).toBe(100);
    expect(stitchesFor(100, 100, 100, gauge)).toBe(70);
    expect(rowsFor(300, 200, 60, gauge)).toBe(57);
    expect(rowsFor(1000, 1, 3, gauge)).toBe(1);
  });

  it('has one cell for each square of a drawing, bottom row first', () => {
    const picture = pictureOf(80, 80, (x, y) => ((x >> 3) + 1 === y >> 3 || x < 8 ? NAVY : CREAM));
    const { grid, colours } = finish(pictureToCells(picture, { ...plain, stitches: 10, rows: 10 }));
    expect(gridToText(grid, '.X')).toEqual([
      'X.........',
      'X.........',
      'XX........',
      'X.X.......',
      'X..X......',
      'X...X.....',
      'X....X....',
      'X.....X...',
      'X......X..',
      'X.......X.',
    ]);
    expect(colours).toEqual(['#f0e6d2', '#1e285a']);
  });

  it('keeps edges between two cells where mixing would make a third colour', () => {
    // The border runs through the middle of the fourth column of cells, a little to the right.
    const picture = pictureOf(80, 80, (x) => (x < 36 ? NAVY : CREAM));
    const colours = (reduction: PictureOptions['reduction']) =>
      finish(pictureToCells(picture, { ...plain, yarns: 3, reduction })).colours;
    expect(colours('mean')).toHaveLength(3);
    expect(colours('edges')).toHaveLength(2);
  });

  it('takes the part that was cropped', () => {
    const picture = pictureOf(60, 60, (x, y) => (x >= 20 && x < 40 && y >= 20 && y < 40 && x < 30 ? NAVY : CREAM));
    const crop = { left: 20, top: 20, width: 20, height: 20 };
    const { grid } = finish(
      pictureToCells(picture, { ...plain, crop, stitches: 2, rows: 2, yarns: ['#1e285a', '#f0e6d2'] }),
    );
    // Colours that are equally common: the lightest is the ground.
    expect(gridToText(grid, '.X')).toEqual(['X.', 'X.']);
  });

  it('sorts into the yarns that are given, and keeps those that no cell has', () => {
    const picture = pictureOf(16, 16, (x) => (x < 8 ? [20, 30, 80] : [250, 240, 220]));
    const yarns = ['#c03020', '#f0e6d2', '#1e285a'];
    const { grid, colours } = finish(pictureToCells(picture, { ...plain, yarns }));
    expect(colours).toEqual(['#f0e6d2', '#1e285a', '#c03020']);
    expect(new Set(grid.cells)).toEqual(new Set([0, 1]));
  });

  it.each([0.1, 0.3, 0.5, 0.8])('dithered, black and white mix to %d of the light', (share) => {
    const grey = Math.round(255 * fromLinear(share));
    const picture = pictureOf(60, 60, () => [grey, grey, grey]);
    const options = { ...plain, stitches: 60, rows: 60, yarns: ['#000000', '#ffffff'], dithering: true };
    const { grid, colours } = finish(pictureToCells(picture, options));
    const white = colours.indexOf('#ffffff');
    const lit = [...grid.cells].filter((cell) => cell === white).length / grid.cells.length;
    expect(lit).toBeCloseTo(LINEAR[grey] as number, 1);
  });

  it('without dithering has one yarn where the picture has one shade', () => {
    const picture = pictureOf(20, 20, () => [130, 130, 130]);
    const { grid } = finish(pictureToCells(picture, { ...plain, yarns: ['#000000', '#ffffff'] }));
    expect(new Set(grid.cells).size).toBe(1);
  });

  it('has fewer yarns than asked for where the picture has fewer colours', () => {
    expect(
      finish(
        pictureToCells(
          pictureOf(20, 20, () => CREAM),
          { ...plain, yarns: 4 },
        ),
      ).colours,
    ).toEqual(['#f0e6d2']);
  });

  it.each<{ what: string; change: Partial<PictureOptions>; code: ProblemCode }>([
    { what: 'no stitches', change: { stitches: 0 }, code: 'motif-too-large' },
    { what: 'more rows than a motif has', change: { rows: 4001 }, code: 'motif-too-large' },
    { what: 'one yarn', change: { yarns: 1 }, code: 'yarns-out-of-range' },
    { what: 'more yarns than the palette holds', change: { yarns: 17 }, code: 'yarns-out-of-range' },
    { what: 'an empty part', change: { crop: { left: 1, top: 1, width: 0, height: 5 } }, code: 'crop-outside-picture' },
    {
      what: 'a part outside',
      change: { crop: { left: 5, top: 0, width: 20, height: 5 } },
      code: 'crop-outside-picture',
    },
  ])('refuses $what', ({ change, code }) => {
    const picture = pictureOf(20, 20, () => CREAM);
    expect(codeOf(() => finish(pictureToCells(picture, { ...plain, ...change })))).toBe(code);
  });
});

describe('a photo', () => {
  it('turns a photo upright, whichever of the eight ways it is stored', () => {
    // Exif 2.3, tag 0x0112: what the first stored row and column are in the picture as seen.
    const seen = ['ab', 'cd', 'ef'];
    const stored: Record<Orientation, string[]> = {
      1: ['ab', 'cd', 'ef'],
      2: ['ba', 'dc', 'fe'],
      3: ['fe', 'dc', 'ba'],
      4: ['ef', 'cd', 'ab'],
      5: ['ace', 'bdf'],
      6: ['bdf', 'ace'],
      7: ['fdb', 'eca'],
      8: ['eca', 'fdb'],
    };
    for (const [orientation, rows] of Object.entries(stored)) {
      const picture = pictureOf((rows[0] as string).length, rows.length, (x, y) => [
        rows[y]?.charCodeAt(x) ?? 0,
        0,
        0,
        255,
      ]);
      const turned = upright(picture, Number(orientation) as Orientation);
      const read = Array.from({ length: turned.height }, (_, y) =>
        Array.from({ length: turned.width }, (_, x) =>
          String.fromCharCode(turned.rgba[(y * turned.width + x) * 4] ?? 0),
        ).join(''),
      );
      expect(read, `orientation ${orientation}`).toEqual(seen);
    }
  });
});

describe('what is said of a reading', () => {
  it('says plainly what was counted, and perhaps where it is not sure', () => {
    const sure = (count: number) => ({ count, confidence: 0.9 });
    expect(words.reading.proposal({ columns: sure(24), rows: sure(30) })).toBe('24 columns and 30 rows.');
    expect(words.reading.proposal({ columns: { count: 24, confidence: 0.2 }, rows: sure(30) })).toBe(
      'Perhaps 24 columns and 30 rows. Count again where it says perhaps.',
    );
    expect(words.reading.proposal({ columns: null, rows: null })).toContain('Check the corners');
    expect(words.reading.proposal({ columns: null, rows: sure(30) })).toContain('no columns');
    expect(words.reading.proposal({ columns: sure(24), rows: null })).toContain('no rows');
  });

  it('says how many cells to look at', () => {
    expect(words.reading.doubtful(0, 720)).toBe('No cell is doubtful.');
    expect(words.reading.doubtful(0, 720, false)).toBe('No cell between these corners is doubtful.');
    expect(words.reading.doubtful(1, 720)).toBe('1 of 720 cells is doubtful: look at it.');
    expect(words.reading.doubtful(12, 720)).toBe('12 of 720 cells are doubtful: look at them.');
  });
});
