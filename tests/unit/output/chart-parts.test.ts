import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numbered } from '@shared/output/chart/numbers.ts';
import { chartParts, LAP_CELLS, LEAST_CELL_MM, MOST_CELL_MM } from '@shared/output/chart/parts.ts';

const ROOM = { widthMm: 160, heightMm: 240 };

describe('a chart over pages', () => {
  it.each([
    { columns: 14, rows: 18, aspect: 40 / 28, pages: 1 },
    { columns: 1, rows: 1, aspect: 40 / 28, pages: 1 },
    { columns: 35, rows: 75, aspect: 40 / 28, pages: 1 },
    { columns: 70, rows: 100, aspect: 40 / 28, pages: 2 * 2 },
    // 160 / (3 × 1.43) = 37 columns and 240 / 3 = 80 rows to a page.
    // Two of them are repeated at each join: 35 and 78 at the ends, 33 and 76 between.
    { columns: 200, rows: 1000, aspect: 40 / 28, pages: 6 * 14 },
    { columns: 1000, rows: 1, aspect: 40 / 28, pages: 31 },
  ])('of $columns × $rows takes $pages', ({ columns, rows, aspect, pages }) => {
    expect(chartParts(columns, rows, aspect, ROOM).parts).toHaveLength(pages);
  });

  it('has every cell once, in cells that can be counted, inside the page', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 600 }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (columns, rows, aspect) => {
          const { parts, cellWidth, cellHeight } = chartParts(columns, rows, aspect, ROOM);
          // Each cell is some part's own, once.
          const seen = new Uint8Array(columns * rows);
          for (const { own } of parts) {
            for (let row = own.row; row < own.row + own.height; row++) {
              for (let column = own.column; column < own.column + own.width; column++)
                seen[row * columns + column] = (seen[row * columns + column] as number) + 1;
            }
          }
          expect(seen.every((count) => count === 1)).toBe(true);
          expect(cellWidth / cellHeight).toBeCloseTo(aspect, 9);
          expect(cellWidth).toBeLessThanOrEqual(Math.max(MOST_CELL_MM, LEAST_CELL_MM * aspect) + 1e-9);
          expect(Math.min(cellWidth, cellHeight)).toBeGreaterThanOrEqual(LEAST_CELL_MM - 1e-9);
          for (const { column, row, width, height } of parts) {
            expect(width * cellWidth).toBeLessThanOrEqual(ROOM.widthMm + 1e-6);
            expect(height * cellHeight).toBeLessThanOrEqual(ROOM.heightMm + 1e-6);
            expect(column + width).toBeLessThanOrEqual(columns);
            expect(row + height).toBeLessThanOrEqual(rows);
          }
          // Beyond its own, each shows what its neighbours begin with, and no edge of the chart has more.
          for (const { own, column, row, width, height } of parts) {
            expect(own.column - column).toBe(own.column === 0 ? 0 : LAP_CELLS);
            expect(own.row - row).toBe(own.row === 0 ? 0 : LAP_CELLS);
            expect(column + width).toBe(Math.min(columns, own.column + own.width + LAP_CELLS));
            expect(row + height).toBe(Math.min(rows, own.row + own.height + LAP_CELLS));
          }
        },
      ),
    );
  });

  it('is still drawn where a stitch is wider than the page is tall', () => {
    const { parts, cellWidth, cellHeight } = chartParts(3, 2, 1 / 200, ROOM);
    expect(parts.reduce((sum, { own }) => sum + own.width * own.height, 0)).toBe(6);
    expect(cellHeight).toBeLessThanOrEqual(ROOM.heightMm + 1e-9);
    expect(cellWidth).toBeGreaterThan(0);
  });
});

describe('numbers beside a chart', () => {
  it.each([
    { first: 1, last: 5, cell: 4, needed: 3, numbers: [1, 2, 3, 4, 5] },
    { first: 1, last: 23, cell: 1, needed: 3, numbers: [1, 5, 10, 15, 20, 23] },
    { first: 71, last: 94, cell: 1, needed: 4, numbers: [71, 75, 80, 85, 90, 94] },
    { first: 7, last: 7, cell: 0.1, needed: 3, numbers: [7] },
    { first: 1, last: 2, cell: 1, needed: 3, numbers: [1] },
  ])('from $first to $last at $cell mm are $numbers', ({ first, last, cell, needed, numbers }) => {
    expect(numbered(first, last, cell, needed)).toEqual(numbers);
  });
});
