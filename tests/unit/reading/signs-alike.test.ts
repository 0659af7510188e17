/** Two colours with signs that come to the same in all: a light sign on a dark colour, a dark sign on a lighter one. */
import { expect, it } from 'vitest';
import type { CellSamples } from '../../../src-shared/reading/sample.ts';
import { sortColours } from '../../../src-shared/reading/sort-colours.ts';
import { Chances } from '../../generate/charts/random.ts';

interface Look {
  readonly around: number;
  readonly sign: number;
  /** How much of a cell the sign covers. */
  readonly share: number;
}

const GROUND: Look = { around: 240, sign: 240, share: 0 };
const DARK_ON_GREY: Look = { around: 150, sign: 30, share: 0.5 };
const LIGHT_ON_DARK: Look = { around: 40, sign: 250, share: 0.2 };

/** Cells that look so, as greys, each with its own grain. */
function seen(looks: readonly Look[], columns: number): CellSamples {
  const chances = new Chances(5);
  const grey = (count: number, of: (cell: number, i: number) => number): Float32Array =>
    Float32Array.from({ length: looks.length * count * 3 }, () => 0).map((_, i) => {
      const [cell, at] = [Math.floor(i / (3 * count)), Math.floor(i / 3) % count];
      return of(cell, at);
    });
  const look = (cell: number): Look => looks[cell] as Look;
  const grain = Float64Array.from(looks, () => 4 * chances.normal());
  const whole = (cell: number): number => {
    const { around, sign, share } = look(cell);
    return around * (1 - share) + sign * share + (grain[cell] as number);
  };
  const larger = (cell: number): number => (look(cell).share < 0.5 ? look(cell).around : look(cell).sign);
  return {
    columns,
    rows: looks.length / columns,
    colours: grey(1, larger),
    means: grey(1, whole),
    wholes: grey(1, whole),
    rims: grey(1, (cell) => look(cell).around + (grain[cell] as number)),
    lightest: Float32Array.from(looks, ({ around, sign }) => Math.max(around, sign)),
    unevenness: new Float32Array(looks.length),
    quarters: grey(4, (cell, quarter) => (quarter % 2 === 0 ? look(cell).around : look(cell).sign)),
  };
}

/** So many of each. */
function chart(...those: readonly (readonly [Look, number])[]): CellSamples {
  return seen(
    those.flatMap(([look, many]) => Array.from({ length: many }, () => look)),
    20,
  );
}

it('are never taken for one yarn without a question', () => {
  const both = chart([GROUND, 200], [DARK_ON_GREY, 60], [LIGHT_ON_DARK, 40]);
  const { colours, evidence } = sortColours(both, null);
  expect(colours.length).toBe(2);
  // No further apart than what is one.
  expect(evidence?.closest).toBe(1);
});

it('are one where all have one colour around their signs', () => {
  const one = chart([GROUND, 200], [DARK_ON_GREY, 100]);
  const { colours, evidence } = sortColours(one, null);
  expect(colours.length).toBe(2);
  expect(evidence?.closest).toBeGreaterThan(2);
});

it('are doubtful where a number is given, and so is what was parted to make it up', () => {
  const shaded: Look = { around: 212, sign: 212, share: 0 };
  const looked = chart([GROUND, 130], [shaded, 70], [DARK_ON_GREY, 60], [LIGHT_ON_DARK, 40]);
  const { yarns, margins, unsure } = sortColours(looked, 3);
  expect(yarns[200]).toBe(yarns[260]);
  expect(yarns[0]).not.toBe(yarns[130]);
  expect([...(unsure ?? [])]).toEqual(new Array(300).fill(1));
  expect(Math.max(...margins)).toBe(0);
});

it('are sure where the number that is given is that of the colours around them', () => {
  const { margins, unsure } = sortColours(chart([GROUND, 200], [DARK_ON_GREY, 100]), 2);
  expect([...(unsure ?? [])]).toEqual(new Array(300).fill(0));
  expect(Math.min(...margins)).toBeGreaterThan(0.5);
});
