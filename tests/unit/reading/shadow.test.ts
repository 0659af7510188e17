import { describe, expect, it } from 'vitest';
import { lightOn } from '../../../src-shared/reading/light.ts';
import type { Grid } from '../../../src-shared/grid/index.ts';
import { Chances } from '../../generate/charts/random.ts';
import { blobs, speckled } from './motifs.ts';

const PAPER = 235;
/** Pencil, which leaves paper between its strokes, is lighter than paper in this shadow. */
const PENCIL = 165;
const DEPTH = 0.4;

/** Places are in cells from the lower left. */
type Lit = (x: number, y: number) => number;

/** How light the cells of a motif are, and how light changes inside them. */
function seen({ width, height, cells }: Grid, lit: Lit): { levels: Float64Array; slopes: Float64Array } {
  const slopes = new Float64Array(width * height * 2);
  const levels = Float64Array.from(cells, (yarn, cell) => {
    const [x, y] = [(cell % width) + 0.5, Math.floor(cell / width) + 0.5];
    slopes[cell * 2] = Math.log(lit(x + 0.14, y) / lit(x - 0.14, y)) / 0.28;
    slopes[cell * 2 + 1] = Math.log(lit(x, y + 0.14) / lit(x, y - 0.14)) / 0.28;
    return lit(x, y) * (yarn === 0 ? PAPER : PENCIL);
  });
  return { levels, slopes };
}

/** Shadow where `out` is below 0; so many cells wide is the most of its fall. */
function shadow(out: Lit, wide: number): Lit {
  return (x, y) => 1 - DEPTH / (1 + Math.exp((6 * out(x, y)) / wide));
}

/** The light found, as shares of what it was, but for one factor. */
function off(found: Float32Array, grid: Grid, lit: Lit): number[] {
  const ratios = [...found].map(
    (value, cell) => value / lit((cell % grid.width) + 0.5, Math.floor(cell / grid.width) + 0.5),
  );
  const middle = ratios.toSorted((a, b) => a - b)[ratios.length >> 1] as number;
  return ratios.map((ratio) => Math.abs(ratio / middle - 1));
}

describe('the shadow of a hand with a sharp edge', () => {
  const upright: Lit = (x, y) => 0.98 * x + 0.2 * y - 9;
  const leaning: Lit = (x, y) => 0.8 * x + 0.6 * y - 13;
  const bent: Lit = (x, y) => x - 9 - 2 * Math.sin(y / 5);
  it.each([
    { edge: 'nearly upright', out: upright, wide: 1 },
    { edge: 'leaning', out: leaning, wide: 1.5 },
    { edge: 'bent', out: bent, wide: 2 },
    { edge: 'bent and soft', out: bent, wide: 4 },
  ])('$edge is found, so that pencil is told from it', ({ out, wide }) => {
    for (const grid of [blobs(20, 24, 2, 3), speckled(20, 24, 0.3, 5)]) {
      const lit = shadow(out, wide);
      const { levels, slopes } = seen(grid, lit);
      const found = off(lightOn(levels, 20, 24, slopes).light, grid, lit).sort((a, b) => a - b);
      // Everywhere far within what tells pencil from paper, and closely but on the edge itself.
      expect(found.at(-1)).toBeLessThan(0.1);
      expect(found[Math.floor(found.length * 0.95)]).toBeLessThan(0.03);
    }
  });

  it('lies over a third of a large chart under a lamp from one side', () => {
    const grid = blobs(60, 40, 2, 9);
    const lit: Lit = (x, y) => (0.7 + 0.3 * (y / 40)) * shadow((u, v) => u + 0.2 * v - 24, 2)(x, y);
    const { levels, slopes } = seen(grid, lit);
    const found = off(lightOn(levels, 60, 40, slopes).light, grid, lit).sort((a, b) => a - b);
    expect(found.at(-1)).toBeLessThan(0.1);
  });
});

describe('a shadow that is seen badly', () => {
  it('lies over a few cells in a corner of a large chart', () => {
    const grid = blobs(90, 30, 2, 4);
    const lit = shadow((x, y) => 0.42 * x + 0.91 * y - 5, 2);
    const { levels, slopes } = seen(grid, lit);
    const found = off(lightOn(levels, 90, 30, slopes).light, grid, lit).sort((a, b) => a - b);
    expect(found.at(-1)).toBeLessThan(0.12);
  });

  it('falls softly over small cells in which a coarse picture shows less than half of it', () => {
    const chances = new Chances(3);
    const grid = blobs(120, 80, 2, 4);
    const lit = shadow((x, y) => 0.14 * x + 0.99 * y - 30, 8);
    const { levels, slopes } = seen(grid, lit);
    const flattened = slopes.map((slope) => 0.45 * slope + 0.05 * chances.normal());
    const found = off(lightOn(levels, 120, 80, flattened).light, grid, lit).sort((a, b) => a - b);
    expect(found.at(-1)).toBeLessThan(0.12);
  });

  it('falls softly over cells in some of which signs stand to one side', () => {
    const chances = new Chances(3);
    const grid = blobs(120, 80, 2, 4);
    const lit = shadow((x, y) => 0.14 * x + 0.99 * y - 30, 14);
    const { levels, slopes } = seen(grid, lit);
    const signed = slopes.map((slope) => slope + (chances.next() < 0.4 ? 1 : 0.08) * chances.normal());
    const { light, onEdge } = lightOn(levels, 120, 80, signed);
    expect(onEdge).not.toBeNull();
    const found = off(light, grid, lit).sort((a, b) => a - b);
    expect(found.at(-1)).toBeLessThan(0.12);
  });

  it('is none where cells differ softly and light does not fall inside any', () => {
    const chances = new Chances(3);
    const grid = blobs(120, 80, 2, 4);
    const { levels } = seen(
      grid,
      shadow((x, y) => 0.14 * x + 0.99 * y - 30, 8),
    );
    const noise = Float64Array.from({ length: levels.length * 2 }, () => 0.05 * chances.normal());
    expect(lightOn(levels, 120, 80, noise).onEdge).toBeNull();
  });
});

describe('a figure that has one edge from side to side', () => {
  const whole = (isFigure: (column: number, row: number) => boolean): Grid => ({
    width: 24,
    height: 24,
    cells: Uint8Array.from({ length: 24 * 24 }, (_, cell) => (isFigure(cell % 24, Math.floor(cell / 24)) ? 1 : 0)),
  });
  it.each([
    { figure: 'a half', grid: whole((column) => column < 12) },
    { figure: 'a band at the bottom', grid: whole((_, row) => row < 9) },
    { figure: 'a triangle', grid: whole((column, row) => column + row < 22) },
    { figure: 'a slope of two to one', grid: whole((column, row) => column + 2 * row < 36) },
  ])('is no shadow: $figure, whose cells are even inside', ({ grid }) => {
    const { levels, slopes } = seen(grid, () => 1);
    for (const value of lightOn(levels, 24, 24, slopes).light) expect(Math.abs(value - 1)).toBeLessThan(0.05);
  });

  it('is no shadow in a corner, though the few cells along its edge are ragged', () => {
    const isCorner = (column: number, row: number): boolean => column + row >= 20;
    const grid: Grid = {
      width: 12,
      height: 14,
      cells: Uint8Array.from({ length: 12 * 14 }, (_, cell) => (isCorner(cell % 12, Math.floor(cell / 12)) ? 1 : 0)),
    };
    const { levels, slopes } = seen(grid, () => 1);
    for (let cell = 0; cell < 12 * 14; cell++) {
      // Light falls towards the corner in the outermost strokes.
      if ((cell % 12) + Math.floor(cell / 12) === 20) slopes.fill(-0.15, cell * 2, cell * 2 + 2);
    }
    for (const value of lightOn(levels, 12, 14, slopes).light) expect(Math.abs(value - 1)).toBeLessThan(0.05);
  });
});
