/**
 * Mixes shades from few yarns by scattering their stitches.
 *
 * Each cell takes the nearest yarn and hands on what it got wrong to the
 * cells not yet done (Floyd and Steinberg 1976: 7, 3, 5 and 1 sixteenth).
 * Rows go to and fro, as the carriage does, so that no grain runs one way. The
 * error is handed on as light, since light is what adds up to the eye.
 */
import { oklabOfLinear, type Oklab } from './oklab.ts';
import type { CellLight } from './reduce.ts';
import type { Steps } from './steps.ts';

const ROWS_A_STEP = 16;

/** The yarn of each cell; `yarns` as linear light, three numbers each. */
export function* dither(
  light: CellLight,
  columns: number,
  rows: number,
  yarns: readonly (readonly number[])[],
): Steps<Uint8Array> {
  const wanted = Float32Array.from(light);
  const chosen = new Uint8Array(columns * rows);
  const seen = yarns.map(([red = 0, green = 0, blue = 0]) => oklabOfLinear(red, green, blue));
  for (let row = 0; row < rows; row++) {
    const step = row % 2 === 0 ? 1 : -1;
    for (let i = 0; i < columns; i++) {
      const column = step === 1 ? i : columns - 1 - i;
      const cell = row * columns + column;
      const yarn = nearestYarn(wanted, cell, seen);
      chosen[cell] = yarn;
      for (let channel = 0; channel < 3; channel++) {
        // Held within twice the range: where no yarn is near, errors would grow without end.
        const error = Math.max(
          -1,
          Math.min(1, (wanted[cell * 3 + channel] as number) - (yarns[yarn]?.[channel] as number)),
        );
        const hand = (dx: number, dy: number, share: number): void => {
          if (column + dx < 0 || column + dx >= columns || row + dy >= rows) return;
          const to = (cell + dy * columns + dx) * 3 + channel;
          wanted[to] = (wanted[to] as number) + (error * share) / 16;
        };
        hand(step, 0, 7);
        hand(-step, 1, 3);
        hand(0, 1, 5);
        hand(step, 1, 1);
      }
    }
    if (row % ROWS_A_STEP === 0) yield { stage: 'dither', done: row / rows };
  }
  return chosen;
}

/** The yarn that looks most like the light wanted in a cell. */
export function nearestYarn(light: Float32Array, cell: number, yarns: readonly Oklab[]): number {
  const within = (value: number): number => Math.max(0, Math.min(1, value));
  const [l, a, b] = oklabOfLinear(
    within(light[cell * 3] as number),
    within(light[cell * 3 + 1] as number),
    within(light[cell * 3 + 2] as number),
  );
  let best = 0;
  let least = Infinity;
  yarns.forEach((yarn, index) => {
    const distance = (l - yarn[0]) ** 2 + (a - yarn[1]) ** 2 + (b - yarn[2]) ** 2;
    if (distance < least) {
      least = distance;
      best = index;
    }
  });
  return best;
}
