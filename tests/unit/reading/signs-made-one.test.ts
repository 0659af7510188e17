/** Two signs that blur has made alike, beside one that falls into two kinds: the number of signs is known, which they are is not. */
import { expect, it } from 'vitest';
import { sortSymbols } from '../../../src-shared/reading/sort-symbols.ts';
import { SYMBOL_NUMBERS } from '../../../src-shared/reading/symbols.ts';
import { Chances } from '../../generate/charts/random.ts';

type Sign = Float64Array;

/** Dark in these places, by so much. */
function sign(...places: readonly (readonly [place: number, dark: number])[]): Sign {
  const dark = new Float64Array(SYMBOL_NUMBERS);
  for (const [place, by] of places) dark[place] = by;
  return dark;
}

const bar = (from: number) => [0, 1, 2, 3].map((i) => [from + i, 1] as const);
const none = sign();
const box = sign(...bar(7), ...bar(13));
const boxWith = (dark: number): Sign => sign(...bar(7), ...bar(13), [20, dark]);
const foot = sign(...bar(25), ...bar(31));
const footWith = sign(...bar(25), ...bar(31), [21, 0.6]);

/** So many cells of each, every one with its own grain. */
function chart(...those: readonly (readonly [Sign, number])[]): Float64Array {
  const chances = new Chances(7);
  const cells = those.flatMap(([drawn, many]) => new Array<Sign>(many).fill(drawn));
  return Float64Array.from({ length: cells.length * SYMBOL_NUMBERS }, (_, i) =>
    Math.max(
      0,
      ((cells[Math.floor(i / SYMBOL_NUMBERS)] as Sign)[i % SYMBOL_NUMBERS] as number) + 0.004 * chances.normal(),
    ),
  );
}

/** The least margin of the cells from one on. */
const marginFrom = (margins: ArrayLike<number>, from: number, to: number): number =>
  Math.min(...Array.from(margins).slice(from, to));

it('are doubtful where both are large and nearly apart', () => {
  // Of four signs two are hardly told apart, so a foot with a spot becomes the fourth.
  const { colours, yarns, margins } = sortSymbols(
    chart([none, 110], [box, 28], [boxWith(0.36), 28], [foot, 24], [footWith, 10]),
    4,
  );
  expect(colours).toHaveLength(4);
  expect(yarns[110]).toBe(yarns[138]);
  expect(Math.max(...Array.from(margins).slice(110, 166))).toBe(0);
  // Nothing is said against the others.
  expect(marginFrom(margins, 0, 110)).toBeGreaterThan(0.8);
  expect(marginFrom(margins, 166, 200)).toBeGreaterThan(0.8);
});

it('are one surely where one of them is of few cells, a piece of the other', () => {
  const { margins } = sortSymbols(chart([none, 110], [box, 50], [boxWith(0.36), 6], [foot, 24], [footWith, 10]), 4);
  expect(marginFrom(margins, 110, 166)).toBeGreaterThan(0.8);
});
