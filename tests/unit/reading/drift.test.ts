/** Bent paper: how far the cells of a straightened chart lie off, followed from window to window. */
import { expect, it } from 'vitest';
import { driftOf, mostOf, NO_DRIFT } from '../../../src-shared/reading/drift.ts';

const CELL = 8;
const [COLUMNS, ROWS] = [200, 40];

/** In cells: a sheet that stands up at its left and right, seen a little from below; nothing at the corners. */
const bent = {
  across: (x: number): number => 1.3 * Math.sin(2 * Math.PI * x),
  up: (x: number): number => 4 * 2.2 * x * (1 - x),
};

/** Lines between cells that lie off so far, and `right` pixels to the right and `wider` times as far apart. */
function drawn({ off = bent, right = 0, wider = 1 } = {}): { width: number; height: number; rgba: Uint8ClampedArray } {
  const [width, height] = [COLUMNS * CELL, ROWS * CELL];
  const rgba = new Uint8ClampedArray(width * height * 4).fill(235);
  const isLine = (place: number): boolean => Math.abs(place - Math.round(place)) < 0.09;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [u, v] = [(x + 0.5 - right) / CELL / wider, (y + 0.5) / CELL];
      const isOn = isLine(u - off.across(u / COLUMNS)) || isLine(v - off.up(u / COLUMNS));
      if (isOn) rgba.set([90, 90, 90, 255], (y * width + x) * 4);
    }
  }
  return { width, height, rgba };
}

it('is followed over a chart of 200 columns that is bent by a cell and more', () => {
  const drift = driftOf(drawn(), COLUMNS, ROWS);
  for (const x of [0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9]) {
    for (const y of [0.2, 0.5, 0.8]) {
      expect(Math.abs(drift.across(x, y) - bent.across(x))).toBeLessThan(0.25);
      expect(Math.abs(drift.up(x, y) - bent.up(x))).toBeLessThan(0.25);
    }
  }
  expect(mostOf(drift)).toBeGreaterThan(2);
  expect(drift.astray).toBeNull();
  expect(mostOf(NO_DRIFT)).toBe(0);
});

/** In cells: a sheet that rolls up at its left, by ever more towards it. */
const rolled = (by: number, within: number) => ({
  across: (x: number): number => by * (1 - Math.exp(-x / within)) * (1 - x),
  up: bent.up,
});

it.each([
  { by: 2, within: 0.08 },
  { by: 2.4, within: 0.1 },
])('is followed where the sheet rolls up by more than half a cell from one look to the next: $by', ({ by, within }) => {
  const off = rolled(by, within);
  const drift = driftOf(drawn({ off }), COLUMNS, ROWS);
  // Of the roll itself the surface is too stiff to say more; everywhere else it lies on the lines, and not on those beside.
  for (const x of [0.06, 0.1, 0.2, 0.5, 0.8, 1]) {
    expect(Math.abs(drift.across(x, 0.5) - off.across(x)), `at ${x}`).toBeLessThan(0.25);
  }
});

const flat = { across: () => 0, up: () => 0 };

it.each<{ what: string; drawing: Parameters<typeof drawn>[0]; columns: number; astray: number | null }>([
  { what: 'lie at the corners', drawing: { off: flat }, columns: COLUMNS, astray: null },
  {
    what: 'lie half a cell beside all corners',
    drawing: { off: flat, right: CELL / 2 },
    columns: COLUMNS,
    astray: null,
  },
  { what: 'end 0.4 cells beyond two corners', drawing: { off: flat, wider: 1.002 }, columns: COLUMNS, astray: null },
  { what: 'end 1.6 cells beyond two corners', drawing: { off: flat, wider: 1.008 }, columns: COLUMNS, astray: 1 },
  { what: 'are two fewer than was said', drawing: { off: flat }, columns: COLUMNS + 2, astray: 1 },
])('cells that $what', ({ drawing, columns, astray }) => {
  const seen = driftOf(drawn(drawing), columns, ROWS).astray;
  if (astray === null) expect(seen).toBeNull();
  else expect(seen).toBeCloseTo(astray, 1);
});
