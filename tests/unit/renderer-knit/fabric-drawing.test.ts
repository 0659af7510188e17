/** Which row of the fabric a place on its drawing is. */
import { expect, it } from 'vitest';
import { COMING, rowHeight, rowsBelow } from '../../../src-renderer/knit/fabric-drawing.ts';

it('is the row to come on its strip, and then row by row to the lowest that is shown', () => {
  const drawing = { height: 131, shown: 60 };
  expect(rowHeight(drawing)).toBe(2);
  expect([0, COMING - 1, COMING + 2].map((y) => rowsBelow(drawing, y))).toEqual([0, 0, 0]);
  const first = 131 - 2 * 60;
  expect([first, first + 1.9, first + 2, first + 119].map((y) => rowsBelow(drawing, y))).toEqual([1, 1, 2, 60]);
});
