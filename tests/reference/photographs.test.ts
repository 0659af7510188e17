/**
 * Charts as people have them, photographed as people do: drawn and seen by code
 * of their own (`tests/generate/charts`), which knows nothing of the reader.
 * `npm run photos` reads many more of them, and prints how sure it was.
 */
import { describe, expect, it } from 'vitest';
import {
  findCharts,
  finish,
  photoOf,
  proposeGrid,
  readCells,
  settledCorners,
  sideLengths,
  type Levels,
  type Point,
} from '@shared/reading/index.ts';
import { hexDifference } from '@shared/reading/colour-difference.ts';
import { KINDS, type Kind } from '../generate/charts/kinds.ts';
import { photographOf } from '../generate/charts/photographs.ts';
import { foundIn } from '../photos/found.ts';
import { cornersOff, tried } from '../photos/tried.ts';

/**
 * Small ones of every kind, and under every light that falls on a kind; of
 * pencil's strokes in the sharp shadow of a hand, darker than they are, 118
 * and 41023, where cells stand on its edge; 50059 has a corner of strokes that
 * is none. 41009 and 50036 are cards with
 * groups of holes far from one another, and specks in between; the signs of
 * 30022 fill their cells, and its yarns are seen around them; 30059 has small
 * rings and boxes, blurred; the crosses of 970032 outweigh its faint lines.
 * Signs that can hardly be told apart are not among these: of those few or
 * no cells are wrong, but many are marked.
 */
const SEEDS: Record<Kind, readonly number[]> = {
  ink: [27, 45, 117, 99, 108],
  'pencil hatched': [55, 28, 73, 118, 136, 109, 41023, 50059],
  'pencil scribbled': [11, 65, 92, 119],
  crosses: [75, 12, 21, 156, 970032],
  'felt pen': [13, 4, 157, 85, 76],
  'punched card': [23, 131, 32, 140, 41009, 50036],
  'printed colours': [51, 141, 114, 69, 132],
  'printed colours with symbols': [61, 133, 52, 115, 124, 30022],
  'symbols in black and white': [53, 89, 98, 26, 30059],
};

describe.each(KINDS)('%s', (kind) => {
  it.each(SEEDS[kind])('photograph %i: all but a few cells, and those that are wrong are marked', (seed) => {
    const photograph = photographOf(seed);
    expect(photograph.kind).toBe(kind);
    const { cells, wrong, unmarked, marked, refused } = tried(photograph, 0);
    expect(refused).toBeNull();
    expect(unmarked).toBe(0);
    expect(wrong).toBeLessThanOrEqual(Math.max(5, 0.01 * cells));
    expect(marked).toBeLessThanOrEqual(Math.max(12, 0.03 * cells));
  });
});

it('leaves nothing unmarked where dashes outweigh the lines and lie a row off: photograph 970019', () => {
  expect(tried(photographOf(970019), 0).unmarked).toBe(0);
});

it('reads a corner full of strokes that could be a shadow, or marks it: photograph 41005', () => {
  const { unmarked, marked, refused } = tried(photographOf(41005), 0);
  expect({ unmarked, refused }).toEqual({ unmarked: 0, refused: null });
  expect(marked).toBeLessThanOrEqual(12);
});

it('gives yarns the colours around their signs where all signs are white: photograph 30022', () => {
  const { picture, corners, grid } = photographOf(30022);
  const levels: Levels = { kind: 'colours', count: null };
  const { colours } = finish(readCells(photoOf(picture), corners, grid.width, grid.height, levels));
  expect(colours).toHaveLength(4);
  for (const [i, one] of colours.entries()) {
    // Far more than the 5 that two yarns differ by at least.
    for (const other of colours.slice(i + 1)) expect(hexDifference(one, other)).toBeGreaterThan(15);
  }
});

describe('symbols in one ink', () => {
  it.each([
    ['some lie a little to the side', 10052],
    ['bars and strokes have edges where lines have none', 10466],
    ['a few cells of one differ from the others by chance', 50084],
  ])('are told where %s: photograph %i', (_, seed) => {
    const photograph = photographOf(seed);
    const { wrong, unmarked, refused } = tried(photograph, 0);
    expect(photograph.toldBy).toBe('symbols');
    expect({ wrong, unmarked, refused }).toEqual({ wrong: 0, unmarked: 0, refused: null });
  });
});

describe('between corners that are known', () => {
  // Small cells whose edges hardly stand out one way, of which the other count says how many are likely.
  it.each([320019, 320027, 330005])('columns and rows of photograph %i are counted, and said to be a guess', (seed) => {
    const { picture, corners, grid } = photographOf(seed);
    const { columns, rows } = finish(proposeGrid(photoOf(picture), corners));
    expect([columns?.count, rows?.count]).toEqual([grid.width, grid.height]);
    expect(Math.min(columns?.confidence ?? 1, rows?.confidence ?? 1)).toBeLessThan(0.5);
  });
});

describe('with nothing said about it', () => {
  // Below the chart of 30000 the paper lies in a shadow as dark as the table; in such a one lies the last row of 331006.
  // The crosses of 410070 are darker than its lines, and go aslant from cell to cell.
  it.each([117, 99, 28, 73, 12, 13, 69, 133, 124, 44, 30000, 331006, 410070])(
    'the chart of photograph %i is found: its counts, and its corners to a third of a cell',
    (seed) => {
      const { counts, off } = foundIn(photographOf(seed));
      expect(counts).toBe(true);
      expect(off).toBeLessThan(1 / 3);
    },
  );

  // The figures of 720086 go aslant more clearly than its rows do.
  it.each([32, 131, 140, 20066, 41000, 41009, 720086])(
    'card %i is found by its feed holes, where rows are punched and where not',
    (seed) => {
      expect(foundIn(photographOf(seed))).toMatchObject({ counts: true, sure: true, why: [] });
    },
  );

  // A hand's shadow lies over the outline of 41025; along that of 420209 signs stand in most cells.
  it.each([51, 20043, 20085, 41025, 420209])(
    'chart %i on squared paper is found by the outline that is drawn round it',
    (seed) => {
      const { counts, off, why } = foundIn(photographOf(seed));
      expect(counts).toBe(true);
      expect(off).toBeLessThan(1 / 3);
      expect(why).toEqual(['outlined']);
    },
  );

  // Faint pencil, signs at the ends an empty row away, a title whose letters lie fives apart, a shadow over a corner,
  // and signs that come back aslant more clearly than the lines around them.
  it.each([420428, 420992, 420954, 421280, 420712])(
    'chart %i on squared paper without an outline is found by what is drawn into its cells, and never surely',
    (seed) => {
      const { counts, off, why } = foundIn(photographOf(seed));
      expect(counts).toBe(true);
      expect(off).toBeLessThan(1 / 3);
      expect(why).toEqual(['lines-go-on']);
    },
  );

  it('a chart is said to be too faint where that hides it: photograph 41051', () => {
    const problem = { code: 'chart-not-found', facts: { why: 'too-faint', width: 275, height: 300 } };
    expect(() => finish(findCharts(photoOf(photographOf(41051).picture)))).toThrow(
      expect.objectContaining({ problem: expect.objectContaining(problem) }),
    );
  });

  it.each([
    ['an outline on squared paper', 51, 'outlined'],
    ['lines over the whole sheet', 61, 'lines-go-on'],
  ] as const)('a chart with %s is never said to be surely found', (_, seed, why) => {
    const [found] = finish(findCharts(photoOf(photographOf(seed).picture)));
    expect(found).toMatchObject({ sure: false });
    expect(found?.why).toContain(why);
  });
});

describe('a chart shown on a screen and photographed off it', () => {
  // Small ones: bands and fringes of two rasters (moiré) lie over all cells.
  it.each([2, 3])('photograph %i: every cell, and as many yarns as are shown, or they are asked for', (seed) => {
    const { wrong, unmarked, refused, yarnsRight, asked } = tried(photographOf(seed, { isOnScreen: true }), 0);
    expect({ wrong, unmarked, refused }).toEqual({ wrong: 0, unmarked: 0, refused: null });
    expect(yarnsRight || asked).toBe(true);
  });
});

describe('corners set by hand', () => {
  it.each([99, 28, 13, 69, 32, 20043])(
    'four and ten pixels off give the cells that exact ones give: photograph %i',
    (seed) => {
      const photograph = photographOf(seed);
      const [exact, four, ten] = [0, 4, 10].map((pixels) => tried(photograph, pixels));
      expect(exact).toMatchObject({ refused: null, wrong: 0 });
      for (const off of [four, ten]) expect(off).toMatchObject({ refused: null, wrong: 0, unmarked: 0 });
    },
  );

  // Of small cells ten pixels are up to 2.2; of 30014 the lattice is led astray from where it is begun first.
  it.each([30014, 30005, 50013, 50073])(
    'are put on the corners of the chart with these counts: photograph %i',
    (seed) => {
      const photograph = photographOf(seed);
      const { corners, grid, picture } = photograph;
      const { across, up } = sideLengths(corners);
      const cell = Math.min(across / grid.width, up / grid.height);
      for (const pixels of [0, 10]) {
        const set = cornersOff(photograph, pixels);
        const settled = finish(settledCorners(photoOf(picture), set, grid.width, grid.height));
        const off = settled.map(
          ({ x, y }, i) => Math.hypot(x - (corners[i] as Point).x, y - (corners[i] as Point).y) / cell,
        );
        expect(Math.max(...off)).toBeLessThan(1 / 3);
      }
    },
  );
});

describe('a written legend beside a chart', () => {
  // Of yarns told by colour, by felt pen and by signs alone: a cell of each of them stands beside the chart, with a word.
  it.each([114, 13, 44])('is left out, and brings no yarn, no column and no row: photograph %i', (seed) => {
    const photograph = photographOf(seed, { hasLegend: true });
    const { counts, off } = foundIn(photograph);
    expect(counts).toBe(true);
    expect(off).toBeLessThan(1 / 3);
    const { wrong, unmarked, yarnsRight, countsRight } = tried(photograph, 0);
    expect({ wrong, unmarked, yarnsRight, countsRight }).toEqual({
      wrong: 0,
      unmarked: 0,
      yarnsRight: true,
      countsRight: true,
    });
  });
});

it('reads nothing out of a sheet with nothing on it, instead of one yarn', () => {
  const photograph = photographOf(53);
  const { picture, corners, grid } = photograph;
  const blank = { ...picture, rgba: picture.rgba.map((value, i) => (i % 4 === 3 ? value : 230)) };
  const each: Levels[] = [
    { kind: 'ink', figure: 'dark' },
    { kind: 'colours', count: null },
    { kind: 'symbols', count: null },
  ];
  for (const levels of each) {
    expect(() => finish(readCells(photoOf(blank), corners, grid.width, grid.height, levels))).toThrow(
      expect.objectContaining({ message: 'photo-flat' }),
    );
  }
});
