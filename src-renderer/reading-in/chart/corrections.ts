/** Cells that a person has looked at and settled, kept while the reading around them changes. */
import { modulo } from '@shared/grid/index.ts';
import type { ChartReading } from '@shared/reading/index.ts';

/** A settled cell by its place in the grid, and the colour it was given. */
export interface Correction {
  readonly cell: number;
  readonly colour: string;
}

/** The reading with what was settled in it. A colour that is no longer among the yarns becomes the nearest one that is. */
export function corrected(reading: ChartReading, corrections: readonly Correction[]): ChartReading {
  if (corrections.length === 0) return reading;
  const cells = reading.grid.cells.slice();
  const doubtful = reading.doubtful.slice();
  const confidence = reading.confidence.slice();
  for (const { cell, colour } of corrections) {
    if (cell >= cells.length) continue;
    cells[cell] = nearest(reading.colours, colour);
    doubtful[cell] = 0;
    // Nothing that another photo shows is surer than a person who looked.
    confidence[cell] = 1;
  }
  return { ...reading, grid: { ...reading.grid, cells }, doubtful, confidence };
}

/** The next doubtful cell after `from` going up row by row, or before it with a step of -1, round and round; null if there is none. */
export function nextDoubtful({ doubtful }: ChartReading, from: number | null, step: 1 | -1): number | null {
  const count = doubtful.length;
  const start = from ?? (step === 1 ? -1 : count);
  for (let i = 1; i <= count; i++) {
    const cell = modulo(start + step * i, count);
    if (doubtful[cell] === 1) return cell;
  }
  return null;
}

function nearest(colours: readonly string[], wanted: string): number {
  const distances = colours.map((colour) => distance(colour, wanted));
  return distances.indexOf(Math.min(...distances));
}

/** Between two `#rrggbb`, enough to find the same yarn again. */
function distance(one: string, other: string): number {
  const part = (colour: string, at: number): number => Number.parseInt(colour.slice(at, at + 2), 16);
  return [1, 3, 5].reduce((sum, at) => sum + (part(one, at) - part(other, at)) ** 2, 0);
}
