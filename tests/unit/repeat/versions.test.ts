import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import {
  differencesOf,
  measure,
  openSlips,
  proposedOf,
  settleCopies,
  versionsAt,
  type NearRepeat,
} from '@shared/motif/repeat/index.ts';
import { drawing } from '../../property/drawings.ts';

// Two copies of a bird of 8 × 8, one above the other; the upper one has a cell too many, at row 14, stitch 3.
const BIRD = ['........', '..XX....', '.XXXX...', '...XXX..', '..XXXXX.', '...XXXX.', '....X...', '...XX...'];
const copies = (many: number): string[] => Array.from({ length: many }, () => BIRD).flat();
const withCell = (rows: string[], column: number, row: number, cell: string): string[] =>
  rows.map((line, fromTop) => {
    if (rows.length - 1 - fromTop !== row) return line;
    return line.slice(0, column) + cell + line.slice(column + 1);
  });
const measured = (rows: string[]): ReturnType<typeof measure> => measure(gridFromText(rows, '.XO'), 0);

describe('two copies that differ in one cell', () => {
  // Whichever of the two is spoilt: neither is blamed.
  it.each([
    { which: 'upper', row: 13 },
    { which: 'lower', row: 5 },
  ])('are both listed, and neither is blamed: the $which is spoilt', ({ row }) => {
    const rows = withCell(copies(2), 7, row, 'X');
    const { near, slips } = measured(rows);
    expect(near).toMatchObject({ width: 8, height: 8 });
    expect(slips).toEqual([
      { column: 7, row: 5, expected: null },
      { column: 7, row: 13, expected: null },
    ]);
    expect(openSlips(near as NearRepeat)).toEqual([{ column: 7, row: 5, expected: null }]);
    const grid = gridFromText(rows, '.XO');
    const versions = versionsAt(grid, near as NearRepeat, { column: 7, row: 13 });
    expect(versions.map(({ copies, first }) => ({ copies, first }))).toEqual([
      { copies: 1, first: { column: 7, row: 5 } },
      { copies: 1, first: { column: 7, row: 13 } },
    ]);
    expect(proposedOf(versions)).toBeNull();
    expect(differencesOf({ near }, grid)).toEqual([versions]);
  });

  it('become alike as is chosen, and nothing else is touched', () => {
    const grid = gridFromText(withCell(copies(2), 7, 13, 'X'), '.XO');
    const size = { width: 8, height: 8 };
    expect(gridToText(settleCopies(grid, size, { column: 7, row: 5 }, 0), '.XO')).toEqual(copies(2));
    expect(gridToText(settleCopies(grid, size, { column: 7, row: 5 }, 1), '.XO')).toEqual(
      withCell(withCell(copies(2), 7, 13, 'X'), 7, 5, 'X'),
    );
  });
});

describe('more copies', () => {
  it('of three, what two have is proposed', () => {
    const rows = withCell(copies(3), 7, 5, 'X');
    const { near, slips } = measured(rows);
    expect(slips).toEqual([{ column: 7, row: 5, expected: 0 }]);
    const versions = versionsAt(gridFromText(rows, '.XO'), near as NearRepeat, { column: 7, row: 5 });
    expect(versions).toEqual([
      { colour: 0, copies: 2, first: { column: 7, row: 13 } },
      { colour: 1, copies: 1, first: { column: 7, row: 5 } },
    ]);
    expect(proposedOf(versions)?.colour).toBe(0);
  });

  it('of three that are all different, or of four two and two, none is', () => {
    const three = withCell(withCell(copies(3), 7, 5, 'X'), 7, 13, 'O');
    expect(measured(three).slips.map(({ row, expected }) => [row, expected])).toEqual([
      [5, null],
      [13, null],
      [21, null],
    ]);
    const four = withCell(withCell(copies(4), 7, 5, 'X'), 7, 13, 'X');
    expect(measured(four).slips.map(({ row, expected }) => [row, expected])).toEqual([
      [5, null],
      [13, null],
      [21, null],
      [29, null],
    ]);
  });
});

describe('settling', () => {
  it('leaves one version of the place, as many copies as there were, and all other cells as they are', () => {
    fc.assert(
      fc.property(
        drawing({ mostWidth: 9, mostHeight: 9 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        fc.nat(),
        fc.nat(2),
        (grid, width, height, where, colour) => {
          const at = where % grid.cells.length;
          const cell = { column: at % grid.width, row: Math.floor(at / grid.width) };
          const before = versionsAt(grid, { width, height }, cell);
          const after = settleCopies(grid, { width, height }, cell, colour);
          const all = before.reduce((sum, version) => sum + version.copies, 0);
          expect(versionsAt(after, { width, height }, cell)).toMatchObject([{ colour, copies: all }]);
          const changed = after.cells.filter((value, index) => value !== grid.cells[index]).length;
          expect(changed).toBe(all - (before.find((version) => version.colour === colour)?.copies ?? 0));
        },
      ),
      { numRuns: 300, seed: 67 },
    );
  });
});
