/** Motifs to photograph: drawn by rule, so that any size can be had. */
import { makeGrid, type Grid } from '@shared/grid/index.ts';
import { seeded } from './chart-photo.ts';

/** Blobs of figure on ground, as motifs have them, with single cells here and there. */
export function blobs(width: number, height: number, colours: number, seed: number): Grid {
  const grid = makeGrid(width, height);
  const random = seeded(seed);
  const spots = Array.from({ length: Math.ceil((width * height) / 30) }, () => ({
    x: random() * width,
    y: random() * height,
    radius: 0.8 + 2.2 * random(),
    colour: 1 + Math.floor(random() * (colours - 1)),
  }));
  for (const { x, y, radius, colour } of spots) {
    for (let row = Math.max(0, Math.floor(y - radius)); row < Math.min(height, y + radius); row++) {
      for (let column = Math.max(0, Math.floor(x - radius)); column < Math.min(width, x + radius); column++) {
        if (Math.hypot(column + 0.5 - x, row + 0.5 - y) < radius) grid.cells[row * width + column] = colour;
      }
    }
  }
  for (let i = 0; i < grid.cells.length; i++) if (random() < 0.03) grid.cells[i] = Math.floor(random() * colours);
  return grid;
}

/** Cells at random, `share` of them figure. */
export function speckled(width: number, height: number, share: number, seed: number): Grid {
  const grid = makeGrid(width, height);
  const random = seeded(seed);
  for (let i = 0; i < grid.cells.length; i++) grid.cells[i] = random() < share ? 1 : 0;
  return grid;
}
