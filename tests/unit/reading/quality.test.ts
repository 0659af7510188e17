/** Photos that no reading could be believed of say so, and why, in numbers. */
import { describe, expect, it } from 'vitest';
import { finish, photoOf, readCells, type Levels, type Picture } from '@shared/reading/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { photograph, type Wear } from './chart-photo.ts';
import { blobs } from './motifs.ts';

const PAPER = [235, 230, 220] as const;
const INK = [60, 55, 60] as const;
const PALE = [229, 224, 214] as const;
const ink: Levels = { kind: 'ink', figure: 'dark' };

interface Case {
  readonly mark?: typeof PALE;
  readonly wear: Wear;
  readonly levels?: Levels;
  /** Pixels of the picture across and up; the chart of 18 × 22 cells fills most of it. */
  readonly side?: number;
  /** Without, printed lines show where cells are. */
  readonly line?: number;
}

function problemOf({ mark, wear, levels = ink, side = 420, line = 0.08 }: Case): object | null {
  const grid = blobs(18, 22, 2, 3);
  const style = { colours: [PAPER, mark ?? INK], line, ...(mark ? { lineColour: mark } : {}) };
  const camera = { width: side, height: side, roll: 5, tilt: 8, pan: -6 };
  const { picture, corners } = photograph(grid, style, camera, wear);
  const read = outcome(() => finish(readCells(photoOf(picture), corners, 18, 22, levels)));
  return read.ok ? null : read.problem;
}

describe('a photo', () => {
  it.each<{ what: string; photo: Case }>([
    { what: 'as it comes', photo: { wear: { blur: 0.7, noise: 4 } } },
    { what: 'at a third of the light', photo: { wear: { blur: 0.7, noise: 4, light: () => 0.33 } } },
    { what: 'a little out of focus', photo: { wear: { blur: 2, noise: 4 } } },
    { what: 'at high sensitivity', photo: { wear: { blur: 0.7, noise: 20 } } },
    { what: 'with 8 pixels a cell', photo: { wear: { blur: 0.5, noise: 4 }, side: 220 } },
  ])('$what is read', ({ photo }) => {
    expect(problemOf(photo)).toBeNull();
  });

  it.each<{ what: string; photo: Case; problem: object }>([
    {
      what: 'taken in the dark',
      photo: { wear: { blur: 0.7, noise: 1, light: () => 0.003 } },
      problem: { code: 'photo-too-dark', facts: { least: 30, paper: expect.any(Number) as number } },
    },
    {
      what: 'of marks that hardly show',
      photo: { wear: { blur: 0.7, noise: 0.5 }, mark: PALE },
      problem: { code: 'photo-flat', facts: { least: 10, contrast: expect.any(Number) as number } },
    },
    {
      what: 'drowned in grain',
      photo: { wear: { blur: 0.7, noise: 90 } },
      problem: { code: 'photo-grainy' },
    },
    {
      what: 'smeared over a third of a cell',
      photo: { wear: { blur: 6, noise: 2 } },
      problem: { code: 'photo-blurred', facts: { most: 0.185, blur: expect.any(Number) as number } },
    },
    {
      what: 'of two pixels a cell',
      photo: { wear: {}, side: 60 },
      problem: { code: 'cells-too-fine', facts: { leastPixels: 3 } },
    },
    {
      what: 'of signs at four pixels a cell',
      photo: { wear: {}, side: 100, levels: { kind: 'symbols', count: 2 } },
      problem: { code: 'cells-too-fine', facts: { leastPixels: 5 } },
    },
  ])('$what is not read, and says why', ({ photo, problem }) => {
    const found = problemOf(photo);
    expect(found).toMatchObject(problem);
    const { what, mend } = words.problems.say(found as Parameters<typeof words.problems.say>[0]);
    expect(what).toMatch(/\d/);
    expect(mend).not.toBe('');
  });
});

describe('a photo of signs that are nearly alike', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 360, y: 0 },
    { x: 360, y: 360 },
    { x: 0, y: 360 },
  ] as const;
  /** 20 × 20 cells of 18 pixels with lines around them; every third has a sign, now one and now the other. */
  function drawn(signs: readonly ((x: number, y: number) => boolean)[]): Picture {
    const rgba = new Uint8ClampedArray(360 * 360 * 4).fill(255);
    for (let y = 0; y < 360; y++) {
      for (let x = 0; x < 360; x++) {
        const cell = Math.floor(y / 18) * 20 + Math.floor(x / 18);
        const sign = cell % 3 === 0 ? signs[(cell / 3) % signs.length] : undefined;
        const isLine = x % 18 === 0 || y % 18 === 0;
        if (isLine || sign?.((x % 18) - 9, (y % 18) - 9)) rgba.set([50, 50, 50, 255], (y * 360 + x) * 4);
      }
    }
    return { width: 360, height: 360, rgba };
  }
  const disc = (radius: number) => (x: number, y: number) => Math.hypot(x, y) < radius;
  const read = (picture: Picture, count: number | null) =>
    outcome(() => finish(readCells(photoOf(picture), corners, 20, 20, { kind: 'symbols', count })));

  it('asks how many there are, and never assumes it', () => {
    const asked = read(drawn([disc(4.4), disc(4.6)]), null);
    expect(asked.ok ? null : asked.problem).toMatchObject({ code: 'yarns-open', facts: { by: 'symbols' } });
  });

  it('is read as so many as are said to be there', () => {
    const told = read(drawn([disc(2.5), disc(5.5)]), 3);
    expect(told.ok ? new Set(told.value.grid.cells).size : told.problem).toBe(3);
  });
});

describe('a photo of colours that are nearly one', () => {
  const colours = [PAPER, INK, [77, 72, 77], [150, 60, 50]] as const;
  const camera = { width: 460, height: 460, roll: 3, tilt: 6, pan: 4 };
  it('asks how many there are, and is read as so many', () => {
    const { picture, corners } = photograph(blobs(24, 24, 4, 7), { colours, line: 0.06 }, camera, {
      blur: 0.7,
      noise: 3,
    });
    const read = (count: number | null) =>
      outcome(() => finish(readCells(photoOf(picture), corners, 24, 24, { kind: 'colours', count })));
    const asked = read(null);
    expect(asked.ok ? null : asked.problem).toMatchObject({ code: 'yarns-open', facts: { by: 'colours' } });
    const told = read(4);
    expect(told.ok ? told.value.colours.length : told.problem).toBe(4);
  });
});
