/**
 * Timing two kinds of work against each other.
 *
 * Both are timed in turn, many times over, and the ratio is the median of the
 * ratios of neighbours: whatever else slows the machine down slows both.
 */
import type { Grid } from '@shared/grid/index.ts';
import { median, type Bar } from './bar.ts';
import { holdUp } from './slowed.ts';

/** Numbers from 0 to 1 that look random and are the same in every run (Numerical Recipes' generator). */
export function numbers(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

export function gridOf(width: number, height: number, cell: (column: number, row: number) => number): Grid {
  const cells = Uint8Array.from({ length: width * height }, (_, at) => cell(at % width, Math.floor(at / width)));
  return { width, height, cells };
}

/** What much is measured against: nothing that looks at a drawing can do less. */
export function readEveryCell(cells: Uint8Array): number {
  let sum = 0;
  for (let index = 0; index < cells.length; index++) sum += cells[index] as number;
  return sum;
}

/** How long `work` takes, ms, with what it is held up by when the bench itself is tested. Its result is looked at, so that nothing timed is optimised away. */
export function timed(work: () => number, heldUp: () => void = () => undefined): number {
  const start = performance.now();
  const result = work();
  heldUp();
  const ms = performance.now() - start;
  if (Number.isNaN(result)) throw new Error('Nothing was computed');
  return ms;
}

export interface Against {
  readonly name: string;
  readonly limit: number;
  readonly rounds: number;
  /** What is measured, and what it is measured against; each gives a number of what it computed. */
  readonly work: () => number;
  readonly against: () => number;
}

export function ratioBar({ name, limit, rounds, work, against }: Against): Bar {
  // Before the clock counts, for the compiler to have seen both.
  for (let i = 0; i < 20; i++) timed(() => work() + against());
  const ours: number[] = [];
  const others: number[] = [];
  const ratios: number[] = [];
  for (let i = 0; i < rounds; i++) {
    // The other before and after: a slow moment at either is averaged out.
    const before = timed(against);
    const own = timed(work, () => holdUp(limit, before));
    const one = (before + timed(against)) / 2;
    ours.push(own);
    others.push(one);
    ratios.push(own / one);
  }
  return { name, limit, kind: 'at most', ratio: median(ratios), ours: median(ours), against: median(others) };
}
