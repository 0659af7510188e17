import { expect, test } from 'vitest';
import { makeGrid } from '@shared/grid/index.ts';
import { readBmpSize } from '@shared/picture/formats/index.ts';
import { cellsImage } from '../../../src-renderer/canvas/cells-image.ts';

const COLOURS = ['#f2efe6', '#1f3a5f', '#a03020'];

function bytesOf(address: string): Uint8Array {
  const [kind, text = ''] = address.split(',');
  expect(kind).toBe('data:image/bmp;base64');
  return Uint8Array.from(Buffer.from(text, 'base64'));
}

/** Colour of a pixel, counted from the upper left, by the places that Microsoft's description of BITMAPINFOHEADER gives. */
function pixelOf(bytes: Uint8Array, x: number, y: number): string {
  const view = new DataView(bytes.buffer);
  const { width, height } = readBmpSize(bytes);
  const stride = Math.ceil(width / 4) * 4;
  const index = bytes[view.getUint32(10, true) + (height - 1 - y) * stride + x] as number;
  return `#${view
    .getUint32(14 + view.getUint32(14, true) + 4 * index, true)
    .toString(16)
    .padStart(6, '0')}`;
}

test('has a pixel for each cell, the first row of the chart at the bottom', () => {
  const grid = makeGrid(5, 3);
  grid.cells.set([1, 0, 0, 0, 2], 0);
  grid.cells.set([0, 1, 0, 0, 0], 2 * 5);
  const bytes = bytesOf(cellsImage(grid, COLOURS));
  expect(readBmpSize(bytes)).toEqual({ width: 5, height: 3 });
  const rows = [0, 1, 2].map((y) => [0, 1, 2, 3, 4].map((x) => COLOURS.indexOf(pixelOf(bytes, x, y))));
  expect(rows).toEqual([
    [0, 1, 0, 0, 0],
    [0, 0, 0, 0, 0],
    [1, 0, 0, 0, 2],
  ]);
  expect(new DataView(bytes.buffer).getUint32(2, true)).toBe(bytes.length);
});

test('takes the middle of the cells that a pixel stands for, so that both edges of a large chart are there alike', () => {
  const grid = makeGrid(200, 1000);
  // The figure is the right half, and the upper one.
  for (let cell = 0; cell < grid.cells.length; cell++) {
    grid.cells[cell] = cell % 200 >= 100 || cell >= 200 * 500 ? 1 : 0;
  }
  const bytes = bytesOf(cellsImage(grid, COLOURS));
  expect(readBmpSize(bytes)).toEqual({ width: 96, height: 96 });
  const figure = (x: number, y: number): boolean => pixelOf(bytes, x, y) === COLOURS[1];
  expect([figure(0, 47), figure(0, 48), figure(47, 95), figure(48, 95)]).toEqual([true, false, false, true]);
});

test('shows a cell whose yarn is not there as black', () => {
  const grid = makeGrid(1, 1);
  grid.cells[0] = 7;
  expect(pixelOf(bytesOf(cellsImage(grid, COLOURS)), 0, 0)).toBe('#000000');
});
