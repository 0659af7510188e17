/** Cells drawn by strokes told from cells in the shade. */
import { describe, expect, it } from 'vitest';
import { filledOtherwise, unevennessOf } from '../../../src-shared/reading/strokes.ts';
import { photographOf } from '../../generate/charts/photographs.ts';
import { tried } from '../../photos/tried.ts';

const SIDE = 12;
const WHOLE = { left: 0, top: 0, right: SIDE, bottom: SIDE };

function greys(of: (x: number, y: number) => number): Float64Array {
  return Float64Array.from({ length: SIDE * SIDE * 4 }, (_, i) => of((i >> 2) % SIDE, Math.floor((i >> 2) / SIDE)));
}

describe('how uneven a cell is', () => {
  it('is nothing where light falls off evenly, however steeply', () => {
    expect(
      unevennessOf(
        greys((x, y) => 200 - 7 * x + 3 * y),
        SIDE,
        WHOLE,
      ),
    ).toBeCloseTo(0, 6);
  });

  it('is what strokes stray by, as a share of how light it is', () => {
    // Of two values in equal parts each strays by half of what they differ by.
    const strokes = greys((x, y) => ((x + y) % 2 === 0 ? 100 : 140));
    expect(unevennessOf(strokes, SIDE, WHOLE)).toBeCloseTo(20 / 120, 2);
    const inShade = strokes.map((value) => value / 2);
    expect(unevennessOf(inShade, SIDE, WHOLE)).toBeCloseTo(20 / 120, 2);
  });
});

describe('cells filled otherwise than others of their yarn', () => {
  const paper = [0.008, 0.009, 0.01, 0.011, 0.012];
  const strokes = [0.03, 0.034, 0.038, 0.04, 0.045];
  const yarns = Uint8Array.of(0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1);

  it('are a dark one without strokes, and a light one with some', () => {
    const marked = filledOtherwise(yarns, [...paper, 0.035, ...strokes, 0.011]);
    expect(Array.from(marked ?? [])).toEqual([0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1]);
  });

  it('are none where ink fills a cell as evenly as paper does', () => {
    expect(filledOtherwise(yarns, [...paper, 0.01, ...paper, 0.01])).toBeNull();
    expect(filledOtherwise(new Uint8Array(4), paper)).toBeNull();
  });
});

it('a shadow over the corner of a pencilled chart leaves no wrong cell unmarked', () => {
  const { unmarked, wrong, marked, refused } = tried(photographOf(70_004), 4);
  expect({ unmarked, refused }).toEqual({ unmarked: 0, refused: null });
  expect(marked).toBeGreaterThanOrEqual(wrong);
});
