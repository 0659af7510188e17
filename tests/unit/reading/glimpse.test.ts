/** A chart at a glance on a small copy of a photo: a sketch, held against what was drawn. */
import { describe, expect, it } from 'vitest';
import {
  finish,
  glimpseChart,
  photoOf,
  roughCells,
  straighten,
  type Corners,
  type Levels,
  type Lit,
} from '@shared/reading/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { photograph } from './chart-photo.ts';
import { charts } from './charts.ts';
import { blobs } from './motifs.ts';

const camera = { width: 640, height: 520, roll: 4, tilt: 9, pan: -6, fill: 0.86 };
const CELL = 6;

function glimpsed(grid: Grid, style: (typeof charts)[number]['style'], held = camera) {
  const { picture, corners } = photograph(grid, style, held, { blur: 0.6, noise: 3, light: (x) => 1 - 0.3 * x });
  const photo = photoOf(picture);
  const chart = finish(glimpseChart(photo));
  const straight = (at: Corners, cell = CELL) =>
    finish(straighten(photo, at, { width: grid.width * cell, height: grid.height * cell }));
  return { chart, corners, straight };
}

/** Share of cells that are not as drawn, whichever colour is called which: each is the one that it mostly meets. */
function shareWrong(drawn: Grid, read: Grid): number {
  const met = new Map<number, Map<number, number>>();
  drawn.cells.forEach((yarn, cell) => {
    const as = met.get(yarn) ?? new Map<number, number>();
    const seen = read.cells[cell] as number;
    met.set(yarn, as.set(seen, (as.get(seen) ?? 0) + 1));
  });
  const right = [...met.values()].reduce((sum, as) => sum + Math.max(...as.values()), 0);
  return 1 - right / drawn.cells.length;
}

describe('a glimpse', () => {
  const [inked, printed] = charts as [(typeof charts)[number], (typeof charts)[number]];

  it('sees where a chart is, its counts and its colours, and is never sure of it', () => {
    const grid = blobs(40, 32, 4, 5);
    const { chart, corners, straight } = glimpsed(grid, { ...printed.style, cellHeight: 1 });
    expect(chart).toMatchObject({ columns: 40, rows: 32, sure: false });
    chart?.corners.forEach(({ x, y }, index) => {
      const { x: right, y: down } = corners[index] as Corners[number];
      // Within half a cell of some 13 pixels.
      expect(Math.hypot(x - right, y - down)).toBeLessThan(6);
    });
    const reading = roughCells(straight(corners), 40, 32, printed.levels, null);
    expect(reading?.colours).toHaveLength(4);
    expect(shareWrong(grid, reading?.grid as Grid)).toBeLessThan(0.02);
    // Known colours are kept.
    const again = roughCells(straight(corners), 40, 32, printed.levels, reading?.colours ?? null);
    expect(again?.colours).toEqual(reading?.colours);
    expect(shareWrong(grid, again?.grid as Grid)).toBeLessThan(0.02);
  });

  it('sees one of many small cells, and of few large ones', () => {
    const held = { ...camera, width: 1100, height: 860 };
    const many = glimpsed(blobs(96, 74, 4, 5), { ...printed.style, cellHeight: 1 }, held);
    expect(many.chart).toMatchObject({ columns: 96, rows: 74 });
    many.chart?.corners.forEach(({ x, y }, index) => {
      const { x: right, y: down } = many.corners[index] as Corners[number];
      expect(Math.hypot(x - right, y - down)).toBeLessThan(5);
    });
    const few = glimpsed(blobs(24, 20, 4, 5), { ...printed.style, cellHeight: 1 });
    expect(few.chart).toMatchObject({ columns: 24, rows: 20 });
  });

  it('takes the light that was on the cells a moment ago', () => {
    const grid = blobs(30, 24, 2, 5);
    const { corners, straight } = glimpsed(grid, inked.style);
    const lit: Lit = { light: null };
    const read = (): Grid | undefined =>
      roughCells(straight(corners), 30, 24, { kind: 'ink', figure: 'dark' }, null, lit)?.grid;
    const first = read();
    const { light } = lit;
    expect(light).toHaveLength(30 * 24);
    expect(read()).toEqual(first);
    expect(lit.light).toBe(light);
    // Light that is not that of these cells is seen in what is read.
    lit.light = Float32Array.from({ length: 30 * 24 }, (_, cell) => (cell % 30 < 15 ? 3 : 1));
    expect(read()).not.toEqual(first);
  });

  it.each([4, CELL, 31])('tells ink from paper in cells of %i pixels', (cell) => {
    const grid = blobs(30, 24, 2, 5);
    const { corners, straight } = glimpsed(grid, inked.style);
    const reading = roughCells(straight(corners, cell), 30, 24, { kind: 'ink', figure: 'dark' }, null);
    expect(shareWrong(grid, reading?.grid as Grid)).toBeLessThan(0.02);
  });

  it('says nothing of symbols, of one colour alone and of a picture without a chart', () => {
    const paper = { width: 300, height: 240, rgba: new Uint8ClampedArray(300 * 240 * 4).fill(230) };
    const symbols: Levels = { kind: 'symbols', count: null };
    expect(roughCells(paper, 30, 24, symbols, null)).toBeNull();
    expect(roughCells(paper, 30, 24, { kind: 'colours', count: null }, null)).toBeNull();
    expect(finish(glimpseChart(photoOf(paper)))).toBeNull();
  });
});
