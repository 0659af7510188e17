import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { LegibleText, MOVING_MS, REST_MS } from '../../../src-renderer/ui/legible.ts';

let written: string[];
let text: LegibleText;
beforeEach(() => {
  vi.useFakeTimers();
  written = [];
  text = new LegibleText(
    (one) => written.push(one),
    () => Date.now(),
  );
});
afterEach(() => vi.useRealTimers());

it('writes at once what comes after a while, and what goes', () => {
  text.take('row 1');
  expect(written).toEqual(['row 1']);
  text.take('');
  expect(written).toEqual(['row 1', '']);
});

it('writes what changes in every frame now and then, and the last of it once it rests', () => {
  for (let frame = 0; frame <= 60; frame++) {
    text.take(`row ${frame}`);
    vi.advanceTimersByTime(1000 / 60);
  }
  // At 0, and after each half of the second.
  expect(written).toHaveLength(3);
  vi.advanceTimersByTime(REST_MS);
  expect(written.at(-1)).toBe('row 60');
});

it('writes nothing for what comes back to where it was', () => {
  text.take('row 1');
  text.take('row 2');
  text.take('row 1');
  vi.advanceTimersByTime(MOVING_MS);
  expect(written).toEqual(['row 1']);
});

it('writes nothing more once it is stopped', () => {
  text.take('row 1');
  text.take('row 2');
  text.stop();
  vi.advanceTimersByTime(MOVING_MS);
  expect(written).toEqual(['row 1']);
});
