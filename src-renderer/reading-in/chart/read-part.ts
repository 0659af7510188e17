/** What was read of a chart so far, over one photo or several, with the picture of it. */
import type { Grid } from '@shared/grid/index.ts';
import { offsetOf, type ChartReading, type Overlap, type Picture } from '@shared/reading/index.ts';
import { smallCanvas } from '../../pictures/small-canvas.ts';

export interface ReadPart {
  /** With what a person settled in it. */
  readonly reading: ChartReading;
  /** The chart on the photo, straightened. */
  readonly straight: Picture;
  /** How many cells a person settled. */
  readonly settled: number;
}

/** The cells that both photos show, on what they make together; row 0 is the lowest. */
export interface SharedCells {
  readonly column: number;
  readonly row: number;
  readonly width: number;
  readonly height: number;
}

export function sharedCells(one: Grid, other: Grid, { side, shared }: Overlap): SharedCells {
  switch (side) {
    case 'above':
      return { column: 0, row: one.height - shared, width: one.width, height: shared };
    case 'below':
      return { column: 0, row: other.height - shared, width: one.width, height: shared };
    case 'right':
      return { column: one.width - shared, row: 0, width: shared, height: one.height };
    case 'left':
      return { column: other.width - shared, row: 0, width: shared, height: one.height };
  }
}

/** The longer side of a picture put together, at most. */
const MOST_SIDE = 2400;

/** Both pictures as one, as the charts on them are laid over each other; where both show a cell, that of the first. */
export function pictureOfBoth(first: ReadPart, second: ReadPart, overlap: Overlap): Picture {
  const [one, other] = [first.reading.grid, second.reading.grid];
  const { right, up } = offsetOf(one, other, overlap);
  const [left, bottom] = [Math.min(0, right), Math.min(0, up)];
  const columns = Math.max(one.width, right + other.width) - left;
  const rows = Math.max(one.height, up + other.height) - bottom;
  const [across, down] = [first.straight.width / one.width, first.straight.height / one.height];
  const scale = Math.min(1, MOST_SIDE / Math.max(columns * across, rows * down));
  const canvas = new OffscreenCanvas(Math.round(columns * across * scale), Math.round(rows * down * scale));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  const cell = { width: canvas.width / columns, height: canvas.height / rows };
  const lay = ({ straight, reading: { grid } }: ReadPart, column: number, row: number): void => {
    const [width, height] = [grid.width * cell.width, grid.height * cell.height];
    const top = (rows - row - grid.height) * cell.height;
    context.drawImage(smallCanvas(straight, Infinity), column * cell.width, top, width, height);
  };
  lay(second, right - left, up - bottom);
  lay(first, -left, -bottom);
  const { width, height } = canvas;
  return { width, height, rgba: context.getImageData(0, 0, width, height).data };
}
