import { describe, expect, it } from 'vitest';
import { finish, photoOf, readCells, type ChartReading } from '@shared/reading/index.ts';
import { gridToText } from '@shared/grid/index.ts';
import { findColours } from '../../../src-shared/reading/clusters.ts';
import { confidenceOf } from '../../../src-shared/reading/confidence.ts';
import { kMeans } from '../../../src-shared/reading/k-means.ts';
import { lightOn, underEvenLight } from '../../../src-shared/reading/light.ts';
import { oklab } from '../../../src-shared/reading/oklab.ts';
import { normal, photograph, seeded } from './chart-photo.ts';
import { blobs, speckled } from './motifs.ts';

const PAPER = [235, 230, 220] as const;
const INK = [60, 55, 60] as const;

describe('yarns found among cells', () => {
  const yarns = [
    [230, 225, 215],
    [40, 50, 110],
    [190, 60, 50],
    [70, 130, 80],
  ] as const;

  function cells(counts: readonly number[], grain: number, from: readonly (readonly number[])[] = yarns): Float64Array {
    const random = seeded(8);
    const seen = counts.flatMap((count, yarn) =>
      Array.from({ length: count }, () => (from[yarn] as readonly number[]).map((v) => v + grain * normal(random))),
    );
    return Float64Array.from(seen.flatMap(([r = 0, g = 0, b = 0]) => [...oklab(r, g, b)]));
  }

  it.each([
    { counts: [500], grain: 4 },
    { counts: [500, 300], grain: 4 },
    { counts: [900, 300, 40, 200], grain: 6 },
    { counts: [3000, 4, 2, 3], grain: 3 },
    { counts: [400, 400, 400, 400], grain: 0 },
  ])('are as many as there are: $counts', ({ counts, grain }) => {
    const colours = cells(counts, grain);
    expect(findColours(colours, new Uint8Array(colours.length / 3).fill(1), null).colours).toHaveLength(counts.length);
  });

  it('are as many as asked for, the least different ones taken together', () => {
    const colours = cells([400, 300, 200, 100], 4);
    const clean = new Uint8Array(1000).fill(1);
    expect(findColours(colours, clean, 2).colours).toHaveLength(2);
    expect(findColours(colours, clean, 3).colours).toHaveLength(3);
  });

  it.each([
    { many: 3, of: 'four, two pairs as much alike', second: 190, unsure: 3 },
    { many: 3, of: 'four, two of them much more alike', second: 222, unsure: 0 },
    { many: 5, of: 'four', second: 190, unsure: 2 },
    { many: 4, of: 'four', second: 190, unsure: 0 },
  ])('are unsure where the number alone tells them: $many of $of', ({ many, second, unsure }) => {
    const paper = [230, 225, 215];
    const lit = [paper, [second, (second * 225) / 230, (second * 215) / 230], [95, 131, 163], [72, 96, 126]];
    const colours = cells([300, 300, 200, 200], 4, lit);
    const found = findColours(colours, new Uint8Array(1000).fill(1), many);
    expect(found.colours).toHaveLength(many);
    expect(found.unsure.size).toBe(unsure);
  });

  it('are fewer than asked for where there are no more', () => {
    const colours = cells([10, 10], 0);
    expect(findColours(colours, new Uint8Array(20).fill(1), 5).colours).toHaveLength(2);
  });

  it('come out the same every time', () => {
    const colours = cells([200, 150, 30, 20], 5);
    expect(kMeans(colours, 8, 3)).toEqual(kMeans(colours, 8, 3));
    expect(kMeans(colours, 8, 3)).not.toEqual(kMeans(colours, 8, 4));
  });
});

describe('uneven light', () => {
  /** Cells of a motif under light that is known. */
  function lit(light: (x: number, y: number) => number): { seen: Float64Array; truth: number[] } {
    const truth: number[] = [];
    const seen = Float64Array.from(blobs(48, 40, 2, 6).cells, (yarn, cell) => {
      const bright = light(((cell % 48) + 0.5) / 48, (Math.floor(cell / 48) + 0.5) / 40);
      truth.push(bright);
      return bright * (yarn === 0 ? PAPER : INK)[1];
    });
    return { seen, truth };
  }

  it.each<{ lamp: string; light: (x: number, y: number) => number }>([
    { lamp: 'even', light: () => 0.8 },
    { lamp: 'from one side', light: (x, y) => 0.5 + 0.4 * x + 0.1 * y },
    { lamp: 'in the middle', light: (x, y) => 1 - 0.8 * ((x - 0.5) ** 2 + (y - 0.5) ** 2) },
    { lamp: 'with the soft shadow of a hand', light: (x, y) => 0.65 + 0.35 / (1 + Math.exp(-(x + y - 1) * 12)) },
  ])('$lamp is found to 5 parts in 100', ({ light }) => {
    const { seen, truth } = lit(light);
    const found = lightOn(seen, 48, 40, null).light;
    const ratios = [...found].map((value, cell) => value / (truth[cell] as number)).sort((a, b) => a - b);
    const middle = ratios[ratios.length >> 1] as number;
    for (const ratio of ratios) expect(Math.abs(ratio / middle - 1)).toBeLessThan(0.05);
  });

  it('is taken off every cell and its quarters', () => {
    expect([...underEvenLight(Float32Array.from([50, 60, 70, 50, 60, 70]), Float32Array.from([0.5, 1]))]).toEqual([
      100, 120, 140, 50, 60, 70,
    ]);
    const quarters = new Float32Array(24).fill(10);
    expect([...underEvenLight(quarters, Float32Array.from([0.5, 1]), 4)]).toEqual([
      ...new Array<number>(12).fill(20),
      ...new Array<number>(12).fill(10),
    ]);
  });

  it('is not read into an all-over motif without any paper', () => {
    // Dark below, light above: colour, not light, since the step is sharp.
    const seen = Float64Array.from({ length: 30 * 30 }, (_, cell) => (cell < 15 * 30 ? 60 : 200));
    const found = lightOn(seen, 30, 30, null).light;
    for (const value of found) expect(Math.abs(value - 1)).toBeLessThan(0.05);
  });
});

describe('doubt', () => {
  const cells = {
    columns: 3,
    cellPixels: 12,
    colours: ['#ffffff', '#000000'],
    evidence: null,
    unsure: null,
    parted: null,
    onEdge: null,
    otherwise: null,
    yarns: Uint8Array.from([0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1]),
    margins: new Float32Array(12).fill(0.95),
    distances: new Float32Array(12).fill(1),
    // Yarn 1 is drawn as a slash: two quarters of its cells are always white.
    strayQuarters: Uint8Array.from([0, 0, 0, 0, 0, 0, 0, 2, 2, 2, 2, 2]),
  };

  it.each(['ink', 'colours', 'symbols'] as const)(
    'told by %s falls on cells between two yarns, and on no others',
    (by) => {
      const { doubtful, confidence } = confidenceOf({ ...cells, margins: cells.margins.with(4, 0.02) }, by);
      expect([...doubtful]).toEqual([0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0]);
      for (const sure of confidence) expect(sure > 0 && sure <= 1).toBe(true);
    },
  );

  it('grows with all that speaks against a cell', () => {
    const sureOf = (change: Partial<typeof cells>): number =>
      confidenceOf({ ...cells, margins: cells.margins.with(4, 0.5), ...change }, 'ink').confidence[4] as number;
    const before = sureOf({});
    expect(sureOf({ margins: cells.margins.with(4, 0.3) })).toBeLessThan(before);
    expect(sureOf({ distances: cells.distances.with(4, 6) })).toBeLessThan(before);
    expect(sureOf({ strayQuarters: cells.strayQuarters.with(4, 3) })).toBeLessThanOrEqual(before);
  });

  it('falls on all cells of a yarn that may be two, and says no more of them than it knows', () => {
    for (const by of ['colours', 'symbols'] as const) {
      const { doubtful, confidence } = confidenceOf({ ...cells, cellPixels: 40, unsure: cells.yarns }, by);
      expect([...doubtful]).toEqual([...cells.yarns]);
      confidence.forEach((sure, cell) => expect(sure > 0.9001).toBe(cells.yarns[cell] === 0));
    }
  });

  it('falls on cells of which half is another yarn, and not where that is usual', () => {
    const strayQuarters = cells.strayQuarters.with(1, 2).with(9, 4);
    for (const by of ['ink', 'colours'] as const) {
      const { doubtful, confidence } = confidenceOf({ ...cells, strayQuarters }, by);
      expect([...doubtful]).toEqual([0, 1, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0]);
      expect(confidence[1]).toBeLessThanOrEqual(0.9);
    }
  });

  it('falls on each cell of a yarn that has no more than a handful', () => {
    const many = 300;
    const few = {
      ...cells,
      columns: 20,
      yarns: new Uint8Array(many).fill(1, 0, 3),
      margins: new Float32Array(many).fill(0.95),
      distances: new Float32Array(many).fill(1),
      strayQuarters: new Uint8Array(many),
    };
    const { doubtful } = confidenceOf(few, 'colours');
    expect(doubtful.reduce((sum, one) => sum + one, 0)).toBe(3);
  });

  it('falls on cells beside the edge of a shadow that are not clear of the border', () => {
    const onEdge = new Uint8Array(12).fill(1, 0, 6);
    const { doubtful, confidence } = confidenceOf({ ...cells, onEdge, margins: cells.margins.with(4, 0.7) }, 'ink');
    expect([...doubtful]).toEqual([0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0]);
    expect(confidence[4]).toBeLessThanOrEqual(0.9);
  });

  it.each([
    ['falls on each cell that comes out otherwise in other light', 4],
    ['falls on none where so many do that the light is surely another', 60],
  ])('%s', (_, changed) => {
    const many = 300;
    const sorted = {
      ...cells,
      columns: 20,
      yarns: new Uint8Array(many).fill(1, 0, 150),
      margins: new Float32Array(many).fill(0.95),
      distances: new Float32Array(many).fill(1),
      strayQuarters: new Uint8Array(many),
      parted: new Uint8Array(many).fill(1, 0, changed),
    };
    const { doubtful } = confidenceOf(sorted, 'ink');
    expect([...doubtful]).toEqual([...new Uint8Array(many).fill(1, 0, changed === 4 ? 4 : 0)]);
  });
});

describe('cells of a chart', () => {
  const camera = { width: 420, height: 420, roll: 5, tilt: 8, pan: -6 };

  function read(grid: ReturnType<typeof blobs>, figure: 'dark' | 'light' = 'dark'): ChartReading {
    const { picture, corners } = photograph(grid, { colours: [PAPER, INK], line: 0.08 }, camera, {
      blur: 0.7,
      noise: 4,
    });
    return finish(readCells(photoOf(picture), corners, grid.width, grid.height, { kind: 'ink', figure }));
  }

  it('stand as in a grid: the bottom row first, the ground 0, figure black', () => {
    const grid = blobs(18, 22, 2, 3);
    const reading = read(grid);
    expect(gridToText(reading.grid, '.X')).toEqual(gridToText(grid, '.X'));
    expect(reading).toMatchObject({ ground: 0, colours: ['#ffffff', '#000000'] });
  });

  it('of a chart that nothing was drawn on are asked about, and not called ground', () => {
    expect(() => read(speckled(18, 22, 0, 1))).toThrow(expect.objectContaining({ message: 'one-yarn-only' }));
  });

  it('lie where its lines are, though a corner was set a third of a cell off', () => {
    const grid = blobs(18, 22, 2, 3);
    const { picture, corners } = photograph(grid, { colours: [PAPER, INK], line: 0.08 }, camera, {
      blur: 0.7,
      noise: 4,
    });
    const [a, b, c, d] = corners;
    const cell = Math.hypot(b.x - a.x, b.y - a.y) / 18;
    const off = [{ x: a.x - cell / 3, y: a.y + cell / 3 }, b, { x: c.x + cell / 3, y: c.y }, d] as const;
    const reading = finish(readCells(photoOf(picture), off, 18, 22, { kind: 'ink', figure: 'dark' }));
    expect(gridToText(reading.grid, '.X')).toEqual(gridToText(grid, '.X'));
  });

  it('are the same when the photo is read again', () => {
    const grid = blobs(18, 22, 2, 3);
    expect(read(grid)).toEqual(read(grid));
  });
});
