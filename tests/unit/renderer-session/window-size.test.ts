/** The size of the window, kept for the next start where the window is ours. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { contract } from '@shared/host/index.ts';
import { followWindowSize } from '../../../src-renderer/window/window-size.ts';

class FakeWindow extends EventTarget {
  outerWidth = 1280;
  outerHeight = 800;

  becomes(width: number, height: number): void {
    this.outerWidth = width;
    this.outerHeight = height;
    this.dispatchEvent(new Event('resize'));
  }
}
let shown = new FakeWindow();
let mode = 'standalone';

beforeEach(() => {
  vi.useFakeTimers();
  shown = new FakeWindow();
  mode = 'standalone';
  vi.stubGlobal('window', shown);
  vi.stubGlobal('matchMedia', (query: string) => ({ matches: query === `(display-mode: ${mode})` }));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

it('is kept once when it was pulled, and not after that while it stays', () => {
  const kept: unknown[] = [];
  const stop = followWindowSize(false, (size) => kept.push(size));
  for (const width of [1300, 1400, 1600]) shown.becomes(width, 950);
  vi.runAllTimers();
  expect(kept).toEqual([{ width: 1600, height: 950 }]);
  shown.becomes(1600, 950);
  vi.runAllTimers();
  expect(kept).toHaveLength(1);
  stop();
  shown.becomes(1000, 700);
  vi.runAllTimers();
  expect(kept).toHaveLength(1);
});

it('is not kept of a tab in the browser of the person, but of a window of Electron', () => {
  mode = 'browser';
  const kept: unknown[] = [];
  const stop = followWindowSize(false, (size) => kept.push(size));
  shown.becomes(1600, 950);
  vi.runAllTimers();
  expect(kept).toEqual([]);
  stop();
  followWindowSize(true, (size) => kept.push(size));
  shown.becomes(1500, 900);
  vi.runAllTimers();
  expect(kept).toEqual([{ width: 1500, height: 900 }]);
});

it('is not kept where it is too small to open a window of, which the contract refuses too', () => {
  const kept: unknown[] = [];
  followWindowSize(false, (size) => kept.push(size));
  shown.becomes(300, 200);
  vi.runAllTimers();
  expect(kept).toEqual([]);
  const { params } = contract['settings.keep'];
  expect(params.safeParse({ window: { width: 300, height: 200 } }).success).toBe(false);
  expect(params.safeParse({ window: { width: 1600, height: 950 } }).success).toBe(true);
});
