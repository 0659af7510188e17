/** A motif as a PNG with one pixel for each cell, as `measure` and `place` read it. */
import { encode } from 'fast-png';
import { cellAt, type Grid } from '@shared/grid/index.ts';

export function motifPng(grid: Grid, colours: readonly string[]): Uint8Array {
  const { width, height } = grid;
  const data = new Uint8Array(width * height * 3);
  for (let fromTop = 0; fromTop < height; fromTop++) {
    for (let column = 0; column < width; column++) {
      const colour = Number.parseInt((colours[cellAt(grid, column, height - 1 - fromTop)] as string).slice(1), 16);
      data.set([colour >> 16, (colour >> 8) & 255, colour & 255], (fromTop * width + column) * 3);
    }
  }
  return encode({ width, height, data, channels: 3, depth: 8 });
}
