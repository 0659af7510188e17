import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numbered } from '@shared/output/chart/numbers.ts';
import { chartParts, LEAST_CELL_MM, MOST_CELL_MM } from '@shared/output/chart/parts.ts';

const ROOM = { widthMm: 160, heightMm: 240 };

describe('a chart over pages', () => {
  it.each([
    { columns: 14, rows: 18, aspect: 40 / 28, pages: 1 },
    { columns: 1, rows: 1, aspect: 40 / 28, pages: 1 },
    { columns: 35, rows: 75, aspect: 40 / 28, pages: 1 },
    { columns: 70, rows: 100, aspect: 40 / 28, pages: 2 * 2 },
    // 160 / (3 × 1.43) = 37 columns and 240 / 3 = 80 rows to a page.
    { columns: 200, rows: 1000, aspect: 40 / 28, pages: 6 * 13 },
    { columns: 1000, rows: 1, aspect: 40 / 28, pages: 28 },
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
          const cells = parts.reduce((sum, { width, height }) => sum + width * height, 0);
          expect(cells).toBe(columns * rows);
          expect(new Set(parts.map(({ column, row }) => `${column} ${row}`)).size).toBe(parts.length);
          expect(cellWidth / cellHeight).toBeCloseTo(aspect, 9);
          expect(cellWidth).toBeLessThanOrEqual(Math.max(MOST_CELL_MM, LEAST_CELL_MM * aspect) + 1e-9);
          expect(Math.min(cellWidth, cellHeight)).toBeGreaterThanOrEqual(LEAST_CELL_MM - 1e-9);
          for (const { column, row, width, height } of parts) {
            expect(width * cellWidth).toBeLessThanOrEqual(ROOM.widthMm + 1e-6);
            expect(height * cellHeight).toBeLessThanOrEqual(ROOM.heightMm + 1e-6);
            expect(column + width).toBeLessThanOrEqual(columns);
            expect(row + height).toBeLessThanOrEqual(rows);
          }
        },
      ),
    );
  });

  it('is still drawn where a stitch is wider than the page is tall', () => {
    const { parts, cellWidth, cellHeight } = chartParts(3, 2, 1 / 200, ROOM);
    expect(parts.reduce((sum, { width, height }) => sum + width * height, 0)).toBe(6);
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
