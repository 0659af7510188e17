/** Cells that paper's bend carries beyond the straight line between two corners. */
import { describe, expect, it } from 'vitest';
import {
  blankPicture,
  finish,
  photoOf,
  readCells,
  type Corners,
  type Levels,
  type Picture,
} from '@shared/reading/index.ts';
import { bulges } from '../../../src-shared/reading/flatten.ts';
import { Chances } from '../../generate/charts/random.ts';
import { speckled } from './motifs.ts';
import type { Grid } from '@shared/grid/index.ts';

const CELL = 14;
const MARGIN = 40;

/** A lined chart whose lower side bulges by so many cells in the middle; what is drawn in a cell is asked of `isInk`. */
function bent(
  { width, height, cells }: Grid,
  by: number,
  isInk: (yarn: number, x: number, y: number) => boolean,
): { picture: Picture; corners: Corners } {
  const picture = blankPicture(width * CELL + 2 * MARGIN, height * CELL + 2 * MARGIN);
  const chances = new Chances(3);
  for (let y = 0; y < picture.height; y++) {
    for (let x = 0; x < picture.width; x++) {
      const across = (x + 0.5 - MARGIN) / CELL;
      const along = Math.max(0, Math.min(1, across / width));
      const down = (y + 0.5 - MARGIN) / CELL / (1 + (by * 4 * along * (1 - along)) / height);
      const isChart = across > 0 && across < width && down > 0 && down < height;
      const [column, fromTop] = [Math.floor(across), Math.floor(down)];
      const [u, v] = [across - column - 0.5, down - fromTop - 0.5];
      const yarn = cells[(height - 1 - fromTop) * width + column] as number;
      const isLine = Math.max(Math.abs(u), Math.abs(v)) > 0.46;
      const bright = isChart ? (isLine ? 120 : isInk(yarn, u, v) ? 60 : 235) : 235;
      const at = (y * picture.width + x) * 4;
      picture.rgba.fill(bright + 3 * chances.normal(), at, at + 3);
      picture.rgba[at + 3] = 255;
    }
  }
  const [right, bottom] = [MARGIN + width * CELL, MARGIN + height * CELL];
  const corners: Corners = [
    { x: MARGIN, y: MARGIN },
    { x: right, y: MARGIN },
    { x: right, y: bottom },
    { x: MARGIN, y: bottom },
  ];
  return { picture, corners };
}

describe('a chart whose lower side bulges by more than a row', () => {
  const grid = speckled(36, 20, 0.3, 5);
  const ink = (yarn: number): boolean => yarn === 1;
  const sign = (yarn: number, x: number, y: number): boolean => yarn === 1 && Math.hypot(x, y) < 0.22;
  it.each<{ what: string; levels: Levels; isInk: typeof sign }>([
    { what: 'full cells', levels: { kind: 'ink', figure: 'dark' }, isInk: ink },
    { what: 'colours', levels: { kind: 'colours', count: 2 }, isInk: ink },
    { what: 'signs', levels: { kind: 'symbols', count: 2 }, isInk: sign },
  ])('is read to its lowest row: $what', ({ levels, isInk }) => {
    const { picture, corners } = bent(grid, 1.3, isInk);
    const read = finish(readCells(photoOf(picture), corners, grid.width, grid.height, levels));
    // Of two the one that is commoner is the ground, which is white in either.
    expect([...read.grid.cells]).toEqual([...grid.cells]);
  });
});

describe('a bulge', () => {
  const none = (): number => 0;
  it.each([
    { side: 'left', across: (x: number, y: number) => -0.2 * (1 - x) * y * (1 - y) * 4, up: none },
    { side: 'right', across: (x: number, y: number) => 0.2 * x * y * (1 - y) * 4, up: none },
    { side: 'top', across: none, up: (x: number, y: number) => -0.2 * (1 - y) * x * (1 - x) * 4 },
    { side: 'bottom', across: none, up: (x: number, y: number) => 0.2 * y * x * (1 - x) * 4 },
  ])('is seen at the $side, and a hollow is none', ({ across, up }) => {
    expect(bulges({ across, up })).toBe(true);
    expect(bulges({ across: (x, y) => -across(x, y), up: (x, y) => -up(x, y) })).toBe(false);
    expect(bulges({ across: (x, y) => across(x, y) / 4, up: (x, y) => up(x, y) / 4 })).toBe(false);
  });
});
