/** Floats of rows as they are drawn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridFromText, type Grid } from '@shared/grid/index.ts';
import { floatsOfDrawing } from '@shared/strands/index.ts';
import { drawing } from '../../property/drawings.ts';

const GAUGE = { stitches: 28, rows: 40 };
const LIMIT = { stitches: 3, mm: null };
const floatsOf = (grid: Grid) => floatsOfDrawing(grid, 0, GAUGE, LIMIT);

/** Each strand followed by eye: the stitches between one that it knits and the next; main from edge to edge. */
function byEye({ width, height, cells }: Grid): string[][] {
  return Array.from({ length: height }, (_, row) => {
    const line = [...cells.slice(row * width, (row + 1) * width)];
    const found: string[] = [];
    for (const yarn of new Set(line)) {
      const knits = line.flatMap((cell, column) => (cell === yarn ? [column] : []));
      const stops = yarn === 0 ? [-1, ...knits, width] : knits;
      stops.slice(1).forEach((stop, at) => {
        const before = stops[at] as number;
        if (stop - before > 1) found.push(`${yarn}: ${before + 1}-${stop - 1}`);
      });
    }
    return found.sort();
  });
}

describe('floats of a drawing', () => {
  it('lie behind the stitches of other yarns, main from edge to edge', () => {
    // common practice, no source
    const [row = []] = floatsOf(gridFromText(['#...#.'], '.#'));
    expect(row.map(({ strand, first, last, stitches }) => ({ yarn: strand.yarn, first, last, stitches }))).toEqual([
      { yarn: 0, first: 0, last: 0, stitches: 1 },
      { yarn: 1, first: 1, last: 3, stitches: 3 },
      { yarn: 0, first: 4, last: 4, stitches: 1 },
    ]);
  });

  it('are over the limit from one stitch more on', () => {
    const over = (line: string) => floatsOf(gridFromText([line], '.#'))[0]?.map(({ isOver }) => isOver);
    expect(over('#...#')).toContain(false);
    expect(over('#...#')).not.toContain(true);
    expect(over('#....#')).toContain(true);
  });

  it('are none on a row of one yarn, where main waits or knits alone', () => {
    expect(floatsOf(gridFromText(['####', '....'], '.#'))).toEqual([[], []]);
  });

  it('are those that one finds by following each strand', () => {
    fc.assert(
      fc.property(drawing({ mostWidth: 12, mostHeight: 6, colours: 4 }), (grid) => {
        const told = floatsOf(grid).map((floats) =>
          floats.map(({ strand, first, last }) => `${strand.yarn}: ${first}-${last}`).sort(),
        );
        expect(told).toEqual(
          byEye({ ...grid, cells: grid.cells }).map((row, at) =>
            isAllContrast(grid, at) ? row.filter((one) => !one.startsWith('0:')) : row,
          ),
        );
      }),
    );
  });
});

/** Main knits nothing there: it waits, and floats nowhere. */
function isAllContrast({ width, cells }: Grid, row: number): boolean {
  return !cells.slice(row * width, (row + 1) * width).includes(0);
}
