/** Anchors against all ways to choose them. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { anchorsInCopy, type CopyQuestion } from '@shared/anchors/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { bottomUp, excessOf, freeCells, subsetsOf, type Cell } from '../anchors-by-hand.ts';

/** Figure scattered thinly over a few rows, so that most have long floats and some of them cannot be broken. */
const stack = fc
  .record({
    width: fc.integer({ min: 1, max: 24 }),
    rows: fc.integer({ min: 1, max: 3 }),
    figure: fc.integer({ min: 3, max: 24 }),
  })
  .chain(({ width, rows, figure }) =>
    fc
      .array(fc.integer({ min: 0, max: 99 }), { minLength: width * rows, maxLength: width * rows })
      .map((cells): Grid => ({
        width,
        height: rows,
        cells: Uint8Array.from(cells, (cell, at) =>
          cell < figure || at % width === 0 || at % width === width - 1 ? 1 : 0,
        ),
      })),
  );

const alone: Omit<CopyQuestion, 'copy' | 'longest'> = {
  main: 0,
  isBehindFigure: false,
  isBesideItself: false,
  isAboveItself: false,
  step: 0,
  never: new Set(),
  always: new Set(),
};

/** The cells of a row that took an anchor. */
function chosenIn(question: CopyQuestion): Cell[][] {
  return anchorsInCopy(question).map((floats, row) =>
    floats.flatMap(({ yarn, first, anchors }) =>
      anchors.map((at) => ({ column: (first + at) % question.copy.width, row, yarn })),
    ),
  );
}

describe('anchors of rows up to 24 needles wide, up to 3 stacked', () => {
  it('are as few as any choice that leaves as little loose, given what the rows below took', () => {
    fc.assert(
      fc.property(stack, fc.integer({ min: 1, max: 7 }), (copy, longest) => {
        const chosen = chosenIn({ ...alone, copy, longest });
        bottomUp(chosen, (row, below) => {
          const free = freeCells(copy, 0, row).filter(({ column }) => !below.some((cell) => cell.column === column));
          const mine = chosen[row] as Cell[];
          // Nothing leaves less loose than all that are free together.
          const least = excessOf(copy, 1, row, free, longest);
          expect(excessOf(copy, 1, row, mine, longest)).toBe(least);
          for (const cell of mine) expect(free).toContainEqual({ column: cell.column, row });
          for (const fewer of subsetsOf(free, mine.length - 1)) {
            expect(excessOf(copy, 1, row, fewer, longest)).toBeGreaterThan(least);
          }
        });
      }),
      { numRuns: 400 },
    );
  });
});
