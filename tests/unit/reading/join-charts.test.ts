/** Charts over two photos: cut out of one drawing with something shared, and put together again. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crop, makeGrid, type Grid } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  finish,
  JOIN_SIDES,
  joinCharts,
  mostShared,
  overlapsOf,
  type ChartReading,
  type JoinSide,
  type SameYarns,
} from '@shared/reading/index.ts';
import { blobs } from './motifs.ts';

const COLOURS = ['#f4f1e8', '#26345f', '#b93330', '#e0b53c', '#3a7e4a'];

/** A reading that is sure of every cell. */
function readingOf(grid: Grid, colours: readonly string[]): ChartReading {
  const many = grid.cells.length;
  return { grid, colours, ground: 0, confidence: new Float32Array(many).fill(0.9), doubtful: new Uint8Array(many) };
}

const waysOf = (one: ChartReading, two: ChartReading, by: SameYarns) => finish(overlapsOf(one, two, by));

/** A drawing cut in two that share so much; the second stands at `side` of the first. */
function parts(whole: Grid, side: JoinSide, shared: number): { first: Grid; second: Grid } {
  const { width, height } = whole;
  const isUpright = side === 'above' || side === 'below';
  const half = Math.floor((isUpright ? height : width) / 2);
  const near = isUpright ? crop(whole, 0, 0, width, half + shared) : crop(whole, 0, 0, half + shared, height);
  const far = isUpright ? crop(whole, 0, half, width, height - half) : crop(whole, half, 0, width - half, height);
  return side === 'above' || side === 'right' ? { first: near, second: far } : { first: far, second: near };
}

const swapped = (grid: Grid, to: readonly number[]): Grid => ({
  ...grid,
  cells: grid.cells.map((cell) => to[cell] as number),
});

/** The yarn of every cell as its colour: palettes may come in another order. */
const coloursOf = ({ grid, colours }: ChartReading): string[] => [...grid.cells].map((cell) => colours[cell] as string);

describe('two photos of one chart', () => {
  it.each(JOIN_SIDES)('are joined where the second goes on: %s', (side) => {
    const whole = blobs(24, 30, 4, 12);
    const { first, second } = parts(whole, side, 5);
    // In another light every colour is a little different; yarns come in another order.
    const other = ['#eae6da', '#3f8450', '#c23c38', '#2e3b68'];
    const one = readingOf(first, COLOURS.slice(0, 4));
    const two = readingOf(swapped(second, [0, 3, 2, 1]), [
      other[0] as string,
      '#dab03f',
      other[2] as string,
      other[3] as string,
    ]);
    const ways = waysOf(one, two, 'colours');
    expect(ways).toMatchObject([{ side, shared: 5, differing: 0 }]);
    const joined = joinCharts(one, two, { side, shared: 5 }, 'colours');
    expect([joined.grid.width, joined.grid.height]).toEqual([24, 30]);
    expect(coloursOf(joined)).toEqual([...whole.cells].map((cell) => COLOURS[cell]));
    expect(joined.doubtful.some((doubt) => doubt === 1)).toBe(false);
  });

  it('are joined by where yarns stand, where colours say nothing', () => {
    const whole = blobs(20, 24, 3, 4);
    const { first, second } = parts(whole, 'above', 6);
    const greys = ['#ffffff', '#333333', '#777777'];
    const [one, two] = [readingOf(first, greys), readingOf(swapped(second, [0, 2, 1]), greys)];
    expect(waysOf(one, two, 'places')).toMatchObject([{ side: 'above', shared: 6, differing: 0 }]);
    const joined = joinCharts(one, two, { side: 'above', shared: 6 }, 'places');
    expect(coloursOf(joined)).toEqual([...whole.cells].map((cell) => greys[cell]));
  });

  it('keep what is surer where they differ, and mark it as doubtful', () => {
    const whole = blobs(20, 24, 2, 8);
    const { first, second } = parts(whole, 'above', 6);
    const one = readingOf(first, COLOURS.slice(0, 2));
    const two = readingOf({ ...second, cells: second.cells.slice() }, COLOURS.slice(0, 2));
    // Row 1, stitch 3 of the second is row 13 of the first, and is read wrong in either in turn.
    two.grid.cells[2] = 1 - (two.grid.cells[2] as number);
    two.confidence[2] = 0.6;
    expect(waysOf(one, two, 'colours')).toMatchObject([{ side: 'above', shared: 6, differing: 1 }]);
    const joined = joinCharts(one, two, { side: 'above', shared: 6 }, 'colours');
    expect(coloursOf(joined)).toEqual([...whole.cells].map((cell) => COLOURS[cell]));
    expect([...joined.doubtful.keys()].filter((cell) => joined.doubtful[cell] === 1)).toEqual([12 * 20 + 2]);
    two.confidence[2] = 0.95;
    const other = joinCharts(one, two, { side: 'above', shared: 6 }, 'colours');
    expect(coloursOf(other)[12 * 20 + 2]).toBe(COLOURS[1 - (whole.cells[12 * 20 + 2] as number)]);
    expect(other.doubtful[12 * 20 + 2]).toBe(1);
  });

  it('bring yarns that only the second shows', () => {
    const whole = makeGrid(12, 20);
    const drawn = blobs(12, 20, 2, 21);
    whole.cells.set(drawn.cells);
    for (let at = 12 * 17; at < whole.cells.length; at += 2) whole.cells[at] = 2;
    const { first, second } = parts(whole, 'above', 5);
    const colours = COLOURS.slice(0, 3);
    const joined = joinCharts(
      readingOf(first, COLOURS.slice(0, 2)),
      readingOf(second, colours),
      { side: 'above', shared: 5 },
      'colours',
    );
    expect(coloursOf(joined)).toEqual([...whole.cells].map((cell) => colours[cell]));
  });

  it('could meet in several ways where a repeat is drawn many times over: all are told', () => {
    const tile = blobs(12, 4, 2, 3);
    const whole: Grid = {
      width: 12,
      height: 24,
      cells: Uint8Array.from({ length: 12 * 24 }, (_, at) => tile.cells[at % 48] as number),
    };
    const { first, second } = parts(whole, 'above', 4);
    const ways = waysOf(readingOf(first, COLOURS.slice(0, 2)), readingOf(second, COLOURS.slice(0, 2)), 'colours');
    expect(ways.length).toBeGreaterThan(1);
    expect(ways).toContainEqual(expect.objectContaining({ side: 'above', shared: 4, differing: 0 }));
  });

  it('share nothing by blank rows alone, which fit on any others', () => {
    const first = blobs(16, 12, 2, 5);
    const second = blobs(16, 12, 2, 6);
    for (let column = 0; column < 16; column++) {
      first.cells[11 * 16 + column] = 0;
      second.cells[column] = 0;
    }
    expect(waysOf(readingOf(first, COLOURS), readingOf(second, COLOURS), 'colours')).toEqual([]);
  });

  it('may share all but a row, or a column, at the sides where they are as wide or as high', () => {
    expect(mostShared(makeGrid(16, 12), makeGrid(16, 9))).toEqual({ above: 8, below: 8 });
    expect(mostShared(makeGrid(16, 12), makeGrid(10, 12))).toEqual({ right: 9, left: 9 });
    expect(mostShared(makeGrid(16, 12), makeGrid(16, 12))).toEqual({ above: 11, below: 11, right: 15, left: 15 });
  });

  it('are refused where neither rows nor columns agree in number', () => {
    const [one, two] = [readingOf(blobs(16, 12, 2, 5), COLOURS), readingOf(blobs(17, 13, 2, 5), COLOURS)];
    const refused = {
      problem: { code: 'charts-differ-in-size', facts: { width: 16, height: 12, otherWidth: 17, otherHeight: 13 } },
    };
    expect(outcome(() => waysOf(one, two, 'colours'))).toMatchObject(refused);
    expect(outcome(() => joinCharts(one, two, { side: 'above', shared: 1 }, 'colours'))).toMatchObject(refused);
  });

  it('are found to meet as they were cut, whatever the drawing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 30 }),
        fc.integer({ min: 16, max: 40 }),
        fc.integer({ min: 2, max: 5 }),
        fc.constantFrom(...JOIN_SIDES),
        fc.integer({ min: 3, max: 6 }),
        fc.nat(1000),
        (width, height, yarns, side, shared, seed) => {
          const isUpright = side === 'above' || side === 'below';
          const whole = isUpright ? blobs(width, height, yarns, seed) : blobs(height, width, yarns, seed);
          const { first, second } = parts(whole, side, shared);
          const colours = COLOURS.slice(0, yarns);
          const ways = waysOf(readingOf(first, colours), readingOf(second, colours), 'colours');
          // Too little in what is shared to be sure of: then nothing is joined.
          if (ways.length === 0) return;
          expect(ways).toContainEqual(expect.objectContaining({ side, shared, differing: 0 }));
          if (ways.length > 1) return;
          const joined = joinCharts(readingOf(first, colours), readingOf(second, colours), { side, shared }, 'colours');
          expect(coloursOf(joined)).toEqual([...whole.cells].map((cell) => colours[cell]));
        },
      ),
      { numRuns: 200, seed: 68 },
    );
  });
});
