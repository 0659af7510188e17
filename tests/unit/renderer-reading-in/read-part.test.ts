/** What two photos of a chart both show, on what they make together. */
import { expect, it } from 'vitest';
import { crop, makeGrid } from '@shared/grid/index.ts';
import { joinCharts, type ChartReading, type Overlap } from '@shared/reading/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { sharedCells } from '../../../src-renderer/reading-in/chart/read-part.ts';

function readingOf(grid: Grid): ChartReading {
  const many = grid.cells.length;
  const colours = ['#ffffff', '#202020', '#c03030'];
  return { grid, colours, ground: 0, confidence: new Float32Array(many).fill(0.9), doubtful: new Uint8Array(many) };
}

it.each([
  { side: 'above', shared: 3, one: [5, 7], other: [5, 6] },
  { side: 'below', shared: 2, one: [5, 7], other: [5, 6] },
  { side: 'right', shared: 4, one: [8, 5], other: [6, 5] },
  { side: 'left', shared: 1, one: [8, 5], other: [6, 5] },
] as const)('is framed where the second goes on $side', ({ side, shared, one, other }) => {
  const [first, second] = [makeGrid(one[0], one[1]), makeGrid(other[0], other[1])];
  // Cells that both show differ everywhere, and so all of them come out doubtful, and no others.
  first.cells.fill(1);
  second.cells.fill(2);
  const overlap: Overlap = { side, shared };
  const { grid, doubtful } = joinCharts(readingOf(first), readingOf(second), overlap, 'colours');
  const frame = sharedCells(first, second, overlap);
  const marks = { width: grid.width, height: grid.height, cells: doubtful };
  const inside = crop(marks, frame.column, frame.row, frame.width, frame.height);
  expect(inside.cells.every((mark) => mark === 1)).toBe(true);
  expect(doubtful.reduce((sum, mark) => sum + mark, 0)).toBe(frame.width * frame.height);
});
