/** Which grid lines are drawn at a given cell size. */

export interface LineStep {
  /** A line after every `every` cells. */
  readonly every: 1 | 5 | 10;
  /** How much stronger than a plain line, 1 … 3. */
  readonly weight: 1 | 2 | 3;
}

/** Lines closer than this many pixels are a grey haze and are left out. */
const LEAST_SPACING = 5;

/** The lines worth drawing for cells of `size` pixels, fine ones first so that strong ones lie on top. */
export function lineSteps(size: number): readonly LineStep[] {
  const steps: LineStep[] = [];
  if (size >= LEAST_SPACING) steps.push({ every: 1, weight: 1 });
  if (size * 5 >= LEAST_SPACING * 2) steps.push({ every: 5, weight: 2 });
  if (size * 10 >= LEAST_SPACING * 2) steps.push({ every: 10, weight: 3 });
  return steps;
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
