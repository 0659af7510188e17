/** Which grid lines are drawn at a given cell size. */

/** Lines closer than this many pixels are a grey haze and are left out. */
const LEAST_SPACING = 5;

export interface LineStep {
  /** A line after every `every` cells. */
  readonly every: 1 | 5 | 10;
  /**
   * How much stronger than the finest lines that are drawn, 1 … 3. Where plain
   * lines are left out the others step back, or small cells would lie under a net.
   */
  readonly weight: number;
}

/** The lines worth drawing for cells of `size` pixels, fine ones first so that strong ones lie on top. */
export function lineSteps(size: number): readonly LineStep[] {
  const worth = ([1, 5, 10] as const).filter((every) => size * every >= (every === 1 ? 1 : 2) * LEAST_SPACING);
  return worth.map((every, index) => ({ every, weight: index + 1 }));
}

/** Which cells get a number: 1, then every fifth or tenth or more, so that numbers stand at least `room` pixels apart. */
export function numberStep(size: number, room: number): number {
  for (let decade = 1; ; decade *= 10) {
    for (const step of [5 * decade, 10 * decade, 20 * decade]) if (step * size >= room) return step;
  }
}

/** The numbers (from 1) that stand beside cells `first` … `last` (from 0, both included) of `count`. */
export function numbersIn(first: number, last: number, count: number, step: number): number[] {
  const numbers: number[] = [];
  if (first <= 0 && count > 0) numbers.push(1);
  const start = Math.max(step, Math.ceil((first + 1) / step) * step);
  for (let number = start; number <= Math.min(last + 1, count); number += step) {
    if (number > 1) numbers.push(number);
  }
  return numbers;
}
