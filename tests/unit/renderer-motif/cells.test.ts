import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cellAt,
  gridFromText,
  makeGrid,
  straightCopies,
  type CellBox,
  type Copies,
  type Grid,
} from '@shared/grid/index.ts';
import { changedBox, clippedBox, joinedBox } from '../../../src-renderer/canvas/changed.ts';
import { lineSteps, numbersIn, numberStep } from '../../../src-renderer/canvas/lines.ts';
import { isPatchOf, pictureArea, shownBoxes, type CellPicture } from '../../../src-renderer/canvas/picture.ts';

const grids = fc
  .record({ width: fc.integer({ min: 1, max: 23 }), height: fc.integer({ min: 1, max: 19 }) })
  .chain(({ width, height }) =>
    fc
      .uint8Array({ minLength: width * height, maxLength: width * height, max: 2 })
      .map((cells): Grid => ({ width, height, cells: cells.slice() })),
  );

describe('what changed between two drawings', () => {
  it('is the smallest rectangle around all cells that differ', () => {
    fc.assert(
      fc.property(grids, fc.array(fc.nat(), { maxLength: 4 }), (before, places) => {
        const after: Grid = { ...before, cells: before.cells.slice() };
        for (const place of places) after.cells[place % after.cells.length] = 9;
        const differing = [...after.cells.keys()].filter((index) => before.cells[index] !== after.cells[index]);
        const columns = differing.map((index) => index % before.width);
        const rows = differing.map((index) => Math.floor(index / before.width));
        const expected =
          differing.length === 0
            ? null
            : {
                column: Math.min(...columns),
                row: Math.min(...rows),
                width: Math.max(...columns) - Math.min(...columns) + 1,
                height: Math.max(...rows) - Math.min(...rows) + 1,
              };
        expect(changedBox(before, after)).toEqual(expected);
      }),
    );
  });

  it('joins and clips rectangles', () => {
    const a = { column: 1, row: 1, width: 2, height: 2 };
    const b = { column: 4, row: 0, width: 1, height: 1 };
    expect(joinedBox(a, b)).toEqual({ column: 1, row: 0, width: 4, height: 3 });
    expect(clippedBox(joinedBox(a, b), a)).toEqual(a);
    expect(clippedBox(a, b)).toBeNull();
  });
});

describe('neighbouring copies', () => {
  const picture = (grid: Grid, width: number, height: number, lie: Partial<Copies> = {}): CellPicture => ({
    grid,
    colours: ['#000000', '#ffffff'],
    surround: {
      copies: { ...straightCopies({ width, height }), ...lie },
      isMirrored: false,
      columns: 5,
      rows: 4,
      strength: 0.3,
    },
  });

  it('lie on every side of the drawing', () => {
    expect(pictureArea(picture(makeGrid(6, 8), 6, 8))).toEqual({ column: -5, row: -4, width: 16, height: 16 });
  });

  it('show a painted cell wherever the repeat brings it, and nowhere else', () => {
    const cases = fc.record({
      width: fc.integer({ min: 1, max: 9 }),
      height: fc.integer({ min: 1, max: 9 }),
      tileWidth: fc.integer({ min: 1, max: 9 }),
      tileHeight: fc.integer({ min: 1, max: 9 }),
      column: fc.nat(8),
      row: fc.nat(8),
      laid: fc.constantFrom('straight' as const, 'courses' as const, 'columns' as const),
      by: fc.nat(8),
    });
    fc.assert(
      fc.property(cases, ({ width, height, tileWidth, tileHeight, column, row, laid, by }) => {
        fc.pre(tileWidth <= width && tileHeight <= height && column < width && row < height);
        const step = laid === 'straight' ? 0 : by;
        const shown = picture(makeGrid(width, height), tileWidth, tileHeight, { laid, step });
        const boxes = shownBoxes(shown, { column, row, width: 1, height: 1 });
        if (boxes === null) return;
        const area = pictureArea(shown);
        const expected: string[] = [];
        for (let r = area.row; r < area.row + area.height; r++) {
          for (let c = area.column; c < area.column + area.width; c++) {
            const isInside = c >= 0 && r >= 0 && c < width && r < height;
            // Steps of the courses below, or of the columns to the left, taken back.
            const across = laid === 'courses' ? c - Math.floor(r / tileHeight) * step : c;
            const up = laid === 'columns' ? r - Math.floor(c / tileWidth) * step : r;
            const source = isInside
              ? [c, r]
              : [((across % tileWidth) + tileWidth) % tileWidth, ((up % tileHeight) + tileHeight) % tileHeight];
            if (source[0] === column && source[1] === row) expected.push(`${c},${r}`);
          }
        }
        const found = boxes.filter((box) => clippedBox(box, area)).map((box: CellBox) => `${box.column},${box.row}`);
        expect(found.sort()).toEqual(expected.sort());
      }),
    );
  });

  it('are drawn whole again where a tiny repeat shows nearly everywhere', () => {
    expect(shownBoxes(picture(makeGrid(200, 1000), 2, 2), { column: 0, row: 0, width: 1, height: 1 })).toBeNull();
  });

  it('are drawn whole again when the repeat, the size or a colour is another', () => {
    const grid = gridFromText(['.#.#', '#.#.'], '.#');
    const before = picture(grid, 2, 2);
    expect(isPatchOf(picture(makeGrid(4, 2, 1), 2, 2), before)).toBe(true);
    expect(isPatchOf(picture(grid, 4, 2), before)).toBe(false);
    expect(isPatchOf(picture(makeGrid(4, 3), 2, 2), before)).toBe(false);
    expect(isPatchOf({ ...before, colours: ['#000000', '#ff0000'] }, before)).toBe(false);
    expect(cellAt(grid, 0, 0)).toBe(1);
  });
});

describe('grid lines and numbers', () => {
  it.each([
    { size: 24, every: [1, 5, 10] },
    { size: 4, every: [5, 10] },
    { size: 1.5, every: [10] },
    { size: 0.7, every: [] },
  ])('draws lines every $every cells where a cell is $size pixels', ({ size, every }) => {
    expect(lineSteps(size).map((step) => step.every)).toEqual(every);
    expect(lineSteps(size).map((step) => step.weight)).toEqual([1, 2, 3].slice(0, every.length));
  });

  it.each([
    { size: 24, step: 5 },
    { size: 4, step: 10 },
    { size: 1, step: 50 },
    { size: 0.18, step: 200 },
  ])('numbers every $step. row where a row is $size pixels and a number takes 30', ({ size, step }) => {
    expect(numberStep(size, 30)).toBe(step);
  });

  it('begins with 1 and goes on with whole fives', () => {
    expect(numbersIn(-3, 40, 18, 5)).toEqual([1, 5, 10, 15]);
    expect(numbersIn(7, 16, 200, 5)).toEqual([10, 15]);
    expect(numbersIn(9, 14, 200, 5)).toEqual([10, 15]);
  });
});
