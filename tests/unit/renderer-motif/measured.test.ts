/** What large drawings measure, by the worker; there is none here, so that the window does it in its turn. */
import { expect, it, vi } from 'vitest';
import { measure, type Measure } from '@shared/motif/repeat/index.ts';
import { measureDebounced, measureForNow, whenMeasured } from '../../../src-renderer/motif/measured.ts';
import { gridOf } from '../../bench/timing.ts';

/** Another drawing each time, so that none is known already. */
let drawn = 0;
function drawing(width: number, height: number) {
  const period = 3 + drawn++;
  return { grid: gridOf(width, height, (column) => (column % period === 0 ? 1 : 0)), ground: 0 };
}

it('are there at once where they are small', async () => {
  const small = drawing(20, 20);
  expect(await whenMeasured(small)).toEqual(measure(small.grid, 0));
});

it('are asked for once where two wait for them', async () => {
  const large = drawing(120, 120);
  const waiting = [whenMeasured(large), whenMeasured({ ...large })];
  expect(waiting[0]).toBe(waiting[1]);
  expect(await waiting[0]).toEqual(measure(large.grid, 0));
});

it('are given up for those of a later drawing, and for another ground', async () => {
  const [first, second] = [drawing(120, 120), drawing(120, 120)];
  const measured = await Promise.all([
    whenMeasured(first),
    whenMeasured(second),
    whenMeasured({ ...second, ground: 1 }),
  ]);
  expect(measured.map((one) => one?.ground ?? null)).toEqual([null, null, 1]);
});

it('come once the hand rests, and until then what was said before stands', async () => {
  const [first, second] = [drawing(120, 120), drawing(120, 120)];
  const never = vi.fn();
  measureDebounced(first, never, never, never)();
  const before = measureForNow(second, null);
  expect(measureForNow(second, before)).toBe(before);
  const found = await new Promise<Measure>((resolve) => measureDebounced(second, resolve, () => undefined, never));
  expect(found).toEqual(measure(second.grid, 0));
  expect(measureForNow(second, before)).toBe(found);
  expect(never).not.toHaveBeenCalled();
});
