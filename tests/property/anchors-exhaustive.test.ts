/** Anchors against all ways to choose them. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { anchorsInCopy, type CopyQuestion } from '@shared/anchors/index.ts';
import { gridFromText, type Grid } from '@shared/grid/index.ts';
import { excessOf, freeCells, subsetsOf, type Cell } from '../anchors-by-hand.ts';

/** Figure scattered thinly over a few rows, so that most have long floats and some of them cannot be broken. */
const stackOf = (widths: fc.Arbitrary<number>): fc.Arbitrary<Grid> =>
  fc
    .record({
      width: widths,
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

const stack = stackOf(fc.integer({ min: 1, max: 24 }));
/** Of which all choices can be tried. */
const narrowStack = stackOf(fc.integer({ min: 4, max: 14 }));

/** The middle row comes second to the one above it, and the lowest has then what the middle one had taken. */
const threeRows = gridFromText(['##########........####', '#########..........###', '##########...#....####'], '.#');

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
  it('are as few as any choice that leaves as little loose, given what the rows beside took', () => {
    fc.assert(
      fc.property(stack, fc.integer({ min: 1, max: 7 }), (copy, longest) => {
        const chosen = chosenIn({ ...alone, copy, longest });
        chosen.forEach((mine, row) => {
          const beside = [...(chosen[row - 1] ?? []), ...(chosen[row + 1] ?? [])];
          const free = freeCells(copy, 0, row).filter(({ column }) => !beside.some((cell) => cell.column === column));
          // Nothing leaves less loose than all that are free together.
          const least = excessOf(copy, 1, row, free, longest);
          expect(excessOf(copy, 1, row, mine, longest)).toBe(least);
          for (const cell of mine) expect(free).toContainEqual({ column: cell.column, row });
          for (const fewer of subsetsOf(free, mine.length - 1)) {
            expect(excessOf(copy, 1, row, fewer, longest)).toBeGreaterThan(least);
          }
        });
      }),
      { numRuns: 400, examples: [[threeRows, 2]] },
    );
  });

  it('are seldom more, or leave more loose, than the best choice for all rows together', () => {
    let [stacks, notBest] = [0, 0];
    for (const copy of fc.sample(narrowStack, { seed: 3, numRuns: 500 })) {
      for (const longest of [2, 3, 4]) {
        const chosen = chosenIn({ ...alone, copy, longest });
        // Nobody waits for more choices than these.
        const isMuch = chosen.some((_, row) => freeCells(copy, 0, row).length > MOST_FREE);
        if (isMuch || chosen.every((cells) => cells.length === 0)) continue;
        const mine: Cost = {
          excess: chosen.reduce((sum, cells, row) => sum + excessOf(copy, 1, row, cells, longest), 0),
          anchors: chosen.flat().length,
        };
        const best = bestOf(copy, longest);
        expect(isLess(mine, best)).toBe(false);
        stacks++;
        if (isLess(best, mine)) notBest++;
      }
    }
    expect(stacks).toBeGreaterThan(400);
    // With rows broken from below alone, and none exchanged, it is more than three in a hundred.
    expect(notBest / stacks).toBeLessThan(0.025);
  });
});

const MOST_FREE = 8;

interface Cost {
  readonly excess: number;
  readonly anchors: number;
}

function isLess(one: Cost, other: Cost): boolean {
  return one.excess < other.excess || (one.excess === other.excess && one.anchors < other.anchors);
}

/** Of all choices for all rows of which none is stacked: the least that is left loose, and with it the fewest anchors. */
function bestOf(copy: Grid, longest: number): Cost {
  let below: (Cost & { readonly columns: number })[] = [{ columns: 0, excess: 0, anchors: 0 }];
  for (let row = 0; row < copy.height; row++) {
    const free = freeCells(copy, 0, row);
    below = Array.from({ length: 1 << free.length }, (_, choice) => {
      const cells = free.filter((_, at) => (choice >> at) & 1);
      const columns = cells.reduce((bits, { column }) => bits | (1 << column), 0);
      let under: Cost = { excess: Infinity, anchors: Infinity };
      for (const one of below) if ((one.columns & columns) === 0 && isLess(one, under)) under = one;
      const excess = under.excess + excessOf(copy, 1, row, cells, longest);
      return { columns, excess, anchors: under.anchors + cells.length };
    });
  }
  return below.reduce((best: Cost, cost) => (isLess(cost, best) ? cost : best), {
    excess: Infinity,
    anchors: Infinity,
  });
}
