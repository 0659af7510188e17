/** The pace of a piece: rows an hour, what is left, pauses left out. */
import { expect, it } from 'vitest';
import { atOneGo, paceOf, PAUSE_MS } from '@shared/knitting/index.ts';

/** Counted so many seconds after each other. */
const after = (...seconds: number[]): number[] => {
  let at = 1_000_000;
  return [at, ...seconds.map((each) => (at += each * 1000))];
};

it('is how long the last rows took, and what that makes for the rest', () => {
  expect(paceOf(after(20, 20, 20, 20, 20, 20), 90)).toEqual({ rowsAnHour: 180, leftMs: 1_800_000, pauses: 0 });
});

it('leaves out pauses, and says how many', () => {
  const paused = PAUSE_MS / 1000 + 1;
  expect(paceOf(after(20, 20, paused, 20, 20, paused, 20), 3)).toEqual({
    rowsAnHour: 180,
    leftMs: 60_000,
    pauses: 2,
  });
  expect(paceOf(after(paused, paused, paused, paused, paused, paused), 3)).toBeNull();
});

it('follows a knitter who becomes faster', () => {
  const slow = Array.from({ length: 60 }, () => 60);
  const fast = Array.from({ length: 40 }, () => 10);
  expect(paceOf(after(...slow, ...fast), 0)).toEqual({ rowsAnHour: 360, leftMs: 0, pauses: 0 });
});

it('is not told of too few rows, of rows counted at once, or by a clock that was set back', () => {
  expect(paceOf(after(20, 20, 20, 20), 10)).toBeNull();
  expect(paceOf(after(0, 0, 0, 0, 0, 0, 0), 10)).toBeNull();
  expect(paceOf(after(20, -3600, 20, 20, 20, 20), 10)).toMatchObject({ rowsAnHour: 180 });
});

it('has gone on at one go since the last pause, or since the first row', () => {
  const paused = PAUSE_MS / 1000 + 1;
  expect(atOneGo(after(20, 30, 40))).toBe(90_000);
  expect(atOneGo(after(20, paused, 30, 40))).toBe(70_000);
  expect(atOneGo(after(20, paused))).toBe(0);
  expect([atOneGo([]), atOneGo([5])]).toEqual([0, 0]);
});
