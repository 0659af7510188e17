/** What is no chart, and what is too little of one, is told as such. */
import { describe, expect, it } from 'vitest';
import { blankPicture, findCharts, finish, photoOf, type Picture } from '@shared/reading/index.ts';
import { hypothesesOf, type PlacedSeed } from '@shared/reading/follow-lattice.ts';
import { Chances, grain, ripple } from '../../generate/charts/random.ts';
import { blobs } from './motifs.ts';
import { photograph } from './chart-photo.ts';
import { beside, twoChartsOnAPage } from './two-charts.ts';

const WIDTH = 420;
const HEIGHT = 360;

function painted(width: number, height: number, brightAt: (x: number, y: number) => number): Picture {
  const picture = blankPicture(width, height);
  const chances = new Chances(7);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 4;
      picture.rgba.fill(brightAt(x, y) + 3 * chances.normal(), at, at + 3);
      picture.rgba[at + 3] = 255;
    }
  }
  return picture;
}

/** Words of strokes in lines of writing. */
function text(x: number, y: number): number {
  const [line, v] = [Math.floor(y / 17), y % 17];
  const letter = Math.floor(x / (7 + (line % 3)));
  if (v > 11 || grain(letter, line, 3) < 0.17) return 236;
  return grain(Math.floor(x / 2), Math.floor(y / 3), 5 + letter) < 0.4 ? 40 : 236;
}

/** A cat: soft patches and hair. */
function fur(x: number, y: number): number {
  return 130 + 60 * ripple(x / 60, y / 50, 1) + 35 * ripple(x / 3, y / 14, 2) + 20 * ripple(x / 2, y / 5, 4);
}

const look = {
  colours: [
    [240, 238, 230],
    [40, 40, 60],
  ] as const,
  line: 0.08,
  lineColour: [120, 120, 130] as const,
};

describe('no chart is found', () => {
  it.each([
    ['on a blank sheet', painted(WIDTH, HEIGHT, () => 236)],
    ['on a page of text', painted(WIDTH, HEIGHT, text)],
    ['in a cat', painted(WIDTH, HEIGHT, fur)],
    ['in noise', painted(WIDTH, HEIGHT, (x, y) => 255 * grain(x, y, 9))],
  ])('%s', (_, picture) => {
    expect(() => finish(findCharts(photoOf(picture)))).toThrow(
      expect.objectContaining({
        problem: expect.objectContaining({
          code: 'chart-not-found',
          facts: { why: 'no-cells', width: WIDTH, height: HEIGHT },
        }),
      }),
    );
  });

  const noChartIn = (picture: Picture): unknown => {
    try {
      return finish(findCharts(photoOf(picture)));
    } catch (thrown) {
      return (thrown as { problem?: { facts?: { why?: string } } }).problem?.facts?.why;
    }
  };

  it('in the dark, which is said', () => {
    expect(noChartIn(painted(WIDTH, HEIGHT, (x, y) => 8 + 4 * grain(x, y, 3)))).toBe('too-dark');
  });

  it('where all lines are smeared, which is said', () => {
    const { picture } = photograph(
      blobs(24, 20, 2, 5),
      look,
      { width: 300, height: 260, roll: 2, tilt: 0, pan: 0 },
      { blur: 5 },
    );
    expect(noChartIn(picture)).toBe('blurred');
  });

  it('in 40 × 40 pixels, which are said to be too small', () => {
    expect(() => finish(findCharts(photoOf(painted(40, 40, text))))).toThrow(
      expect.objectContaining({
        problem: expect.objectContaining({
          code: 'chart-not-found',
          facts: { why: 'too-small', width: 40, height: 40 },
        }),
      }),
    );
  });
});

it('finds a chart of few and large cells, eighty pixels wide', () => {
  const seen = photograph(
    blobs(10, 9, 2, 3),
    look,
    { width: 960, height: 900, roll: 5, tilt: 8, pan: -6 },
    { blur: 1 },
  );
  expect(finish(findCharts(photoOf(seen.picture)))).toMatchObject([{ columns: 10, rows: 9 }]);
});

it.each([
  ['1800', 30],
  ['3340', 800],
])(
  'finds a wide chart of fine cells, six pixels each, whose lines are gone at half the size, in %s pixels',
  (_, beside) => {
    const [columns, rows, step, margin] = [290, 34, 6, 30];
    const [width, height] = [columns * step + 2 * beside, rows * step + 2 * margin];
    const picture = painted(width, height, (x, y) => {
      const [u, v] = [x - beside, y - margin];
      if (u < 0 || v < 0 || u > columns * step || v > rows * step) return 236;
      return u % step === 0 || v % step === 0 ? 150 : 236;
    });
    const [chart] = finish(findCharts(photoOf(picture)));
    expect(chart).toMatchObject({ columns, rows });
  },
);

it('follows first what many windows say together, and not what one says loudest', () => {
  const at = { x: 0, y: 0 };
  const seedOf = (side: number, score: number): PlacedSeed => ({
    seed: { at, across: { x: side, y: 0 }, down: { x: 0, y: side }, score },
    level: 0,
  });
  const [first] = hypothesesOf([seedOf(23, 10), seedOf(12, 8), seedOf(12.5, 7), seedOf(11.8, 6)]);
  expect(first?.map(({ seed }) => seed.score).sort()).toEqual([6, 7, 8]);
});

it('says of half a chart at which side it goes on beyond the picture', () => {
  const { picture } = photograph(
    blobs(24, 20, 2, 5),
    look,
    { width: 480, height: 400, roll: 3, tilt: 4, pan: 2 },
    { blur: 0.6 },
  );
  expect(() => finish(findCharts(photoOf(part(picture, 0, 260))))).toThrow(
    expect.objectContaining({
      problem: expect.objectContaining({ code: 'chart-cut-off', facts: { sides: ['right'] } }),
    }),
  );
});

/** Columns of pixels `from` … `to - 1`. */
function part({ width, height, rgba }: Picture, from: number, to: number): Picture {
  const kept = blankPicture(to - from, height);
  for (let y = 0; y < height; y++) {
    kept.rgba.set(rgba.subarray((y * width + from) * 4, (y * width + to) * 4), y * (to - from) * 4);
  }
  return kept;
}

it('is never sure of two charts as one, where their cells happen to go on from one to the other', () => {
  const [one, other] = [blobs(14, 16, 2, 5), blobs(20, 12, 2, 6)].map((grid, i) =>
    photograph(grid, look, { width: 300 + 80 * i, height: 330, roll: 2, tilt: 4, pan: 2 }, { blur: 0.6 }),
  );
  const [found] = finish(findCharts(photoOf(beside(one?.picture as Picture, other?.picture as Picture))));
  expect(found?.sure === true && found.columns > 20).toBe(false);
});

it('finds both of two charts on a page', () => {
  const found = finish(findCharts(photoOf(twoChartsOnAPage()))).map(({ columns, rows }) => `${columns} × ${rows}`);
  expect(found.sort()).toEqual(['14 × 16', '26 × 20']);
});
