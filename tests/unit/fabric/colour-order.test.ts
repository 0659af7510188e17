/** Which stripe a row lies in, worked by hand. */
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import { drawnInOrder, rowsOfOrder, stripeAt, stripesOver, type ColourOrder } from '@shared/pattern/index.ts';

const stripe = (rows: number, ...yarns: [drawn: number, knitted: number][]) => ({
  rows,
  yarns: yarns.map(([drawn, knitted]) => ({ drawn, knitted })),
});
const TWO: ColourOrder = { stripes: [stripe(2, [1, 2]), stripe(3, [1, 3])], repeats: false };

describe('an order of colours', () => {
  it('has its stripes one on top of the other, and nothing above the last', () => {
    expect(rowsOfOrder(TWO)).toBe(5);
    const at = (row: number) => stripeAt(TWO, row)?.yarns[0]?.knitted ?? null;
    expect([0, 1, 2, 3, 4, 5, 6].map(at)).toEqual([2, 2, 3, 3, 3, null, null]);
  });

  it('begins again where it repeats', () => {
    const at = (row: number) => stripeAt({ ...TWO, repeats: true }, row)?.yarns[0]?.knitted ?? null;
    expect([4, 5, 6, 7, 9, 10].map(at)).toEqual([3, 2, 2, 3, 3, 2]);
  });

  it.each([
    [4, false, ['0 0–1', '1 2–3']],
    [12, false, ['0 0–1', '1 2–4']],
    [8, true, ['0 0–1', '1 2–4', '0 5–6', '1 7–7']],
  ])('over %i rows (repeating: %s) has these stripes', (rows, repeats, expected) => {
    const runs = stripesOver({ ...TWO, repeats }, rows);
    expect(runs.map(({ index, first, last }) => `${index} ${first}–${last}`)).toEqual(expected);
  });

  it('leaves the ground as it is, and what no stripe names; two drawn yarns may become one', () => {
    const grid = gridFromText(['XO.', 'OX.'], '.XO');
    const order = { stripes: [stripe(1, [1, 2], [0, 1])], repeats: false };
    expect(gridToText(drawnInOrder(grid, 3, order, 0), '.XO')).toEqual(['OX.', 'XO.', 'OO.']);
  });
});
