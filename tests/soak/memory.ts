/** What the page keeps in memory after everything unused is gone. */
import type { CDPSession, Page } from '@playwright/test';

export interface Kept {
  /** Objects of the page's scripts, in MB. */
  readonly heapMb: number;
  readonly nodes: number;
  readonly listeners: number;
}

export type Meter = () => Promise<Kept>;

/** Chromium's own counts; see the domains HeapProfiler and Memory of its DevTools Protocol. */
export async function meterOf(page: Page): Promise<Meter> {
  const devtools: CDPSession = await page.context().newCDPSession(page);
  await devtools.send('HeapProfiler.enable');
  return async () => {
    // What only waits to be finalised is gone with the second.
    for (let times = 0; times < 2; times++) await devtools.send('HeapProfiler.collectGarbage');
    const { usedSize } = await devtools.send('Runtime.getHeapUsage');
    const { nodes, jsEventListeners } = await devtools.send('Memory.getDOMCounters');
    return { heapMb: usedSize / 1e6, nodes, listeners: jsEventListeners };
  };
}

export interface Growth {
  readonly name: keyof Kept;
  readonly second: number;
  readonly last: number;
  /** The last quarter as a multiple of the second. */
  readonly ratio: number;
}

/** The medians of the second and of the last quarter. Throws `RangeError` for fewer than eight measures. */
export function growths(measured: readonly Kept[]): readonly Growth[] {
  if (measured.length < 8) throw new RangeError(`${measured.length} measures have no quarters`);
  const quarter = Math.floor(measured.length / 4);
  return (['heapMb', 'nodes', 'listeners'] as const).map((name) => {
    const second = median(measured.slice(quarter, 2 * quarter).map((kept) => kept[name]));
    const last = median(measured.slice(-quarter).map((kept) => kept[name]));
    return { name, second, last, ratio: last / second };
  });
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}
