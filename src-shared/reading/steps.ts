/**
 * Long work in steps.
 *
 * A reading is a generator that yields how far it is. Whoever drives it
 * decides what happens between two steps: a worker lets messages in, shows
 * progress, and cancels by not asking for the next step; a command line or a
 * test runs to the end with {@link finish}. A step takes a few milliseconds.
 */

/** What a reading is busy with. */
export type Stage =
  'find-chart' | 'straighten' | 'find-grid' | 'sample' | 'even-light' | 'sort-colours' | 'join' | 'reduce' | 'dither';

export interface Progress {
  readonly stage: Stage;
  /** Share of this stage that is done, 0 … 1. */
  readonly done: number;
}

export type Steps<T> = Generator<Progress, T, void>;

/** Runs all steps. `onProgress`, if given, is told of each. */
export function finish<T>(steps: Steps<T>, onProgress?: (progress: Progress) => void): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    onProgress?.(step.value);
  }
}
