/** Short runs of `npm run kills`; its browser is its own, for it is killed. */
import { chanceOf } from '../kills/chance.ts';
import { killWhileDrawing } from '../kills/while-drawing.ts';
import { killWhileKnitting } from '../kills/while-knitting.ts';
import { expect, test } from './app.ts';

test('host and browser killed together while drawing lose at most a second', async () => {
  const { kills, worstMs } = await killWhileDrawing(1, chanceOf(11));
  expect(kills).toBe(1);
  expect(worstMs).toBeLessThanOrEqual(1000);
});

test('host and browser killed while rows are counted lose no row that was shown as done', async () => {
  const { kills, rows } = await killWhileKnitting(2, chanceOf(5));
  expect(kills).toBe(2);
  expect(rows).toBeGreaterThan(0);
});
