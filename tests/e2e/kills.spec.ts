/** A short run of `npm run kills`; its browser is its own, for it is killed. */
import { chanceOf } from '../kills/chance.ts';
import { killWhileDrawing } from '../kills/while-drawing.ts';
import { expect, test } from './app.ts';

test('host and browser killed together while drawing lose at most a second', async () => {
  const { kills, worstMs } = await killWhileDrawing(1, chanceOf(11));
  expect(kills).toBe(1);
  expect(worstMs).toBeLessThanOrEqual(1000);
});
