/** How a chart that is being read is drawn: its photo under lines, its cells, the marks on them. */
import type { ChartReading, Picture } from '@shared/reading/index.ts';
import { smallCanvas } from '../../pictures/small-canvas.ts';
import type { Fitted } from './fitted.ts';

const INK = '#1d2330';
const PAPER = '#ffffff';

/** Lines closer than this on the screen would hide what lies between them. */
const LEAST_SPACE = 4;

/** The straightened photo. */
export function drawStraight(context: CanvasRenderingContext2D, fit: Fitted, straight: Picture): void {
  context.drawImage(smallCanvas(straight, Infinity), fit.left, fit.top, fit.width, fit.height);
}

export function drawCells(context: CanvasRenderingContext2D, fit: Fitted, { grid, colours }: ChartReading): void {
  const cells = new OffscreenCanvas(grid.width, grid.height);
  const small = cells.getContext('2d');
  if (!small) return;
  grid.cells.forEach((yarn, cell) => {
    small.fillStyle = colours[yarn] ?? PAPER;
    small.fillRect(cell % grid.width, grid.height - 1 - Math.floor(cell / grid.width), 1, 1);
  });
  context.imageSmoothingEnabled = false;
  context.drawImage(cells, fit.left, fit.top, fit.width, fit.height);
}

/** Lines between cells, every tenth from the lower left stronger. */
export function drawLines(
  context: CanvasRenderingContext2D,
  fit: Fitted,
  columns: number,
  rows: number,
  colour: string,
): void {
  const every = Math.min(fit.width / columns, fit.height / rows) < LEAST_SPACE ? 10 : 1;
  context.strokeStyle = colour;
  for (let column = 0; column <= columns; column++) {
    if (column % every === 0 || column === columns) {
      const x = fit.left + (column / columns) * fit.width;
      line(context, column % 10 === 0 || column === columns, x, fit.top, x, fit.top + fit.height);
    }
  }
  for (let row = 0; row <= rows; row++) {
    if (row % every === 0 || row === rows) {
      const y = fit.top + (1 - row / rows) * fit.height;
      line(context, row % 10 === 0 || row === rows, fit.left, y, fit.left + fit.width, y);
    }
  }
  context.globalAlpha = 1;
}

function line(context: CanvasRenderingContext2D, isStrong: boolean, ...[x1, y1, x2, y2]: number[]): void {
  context.globalAlpha = isStrong ? 1 : 0.45;
  context.lineWidth = isStrong ? 1.5 : 1;
  context.beginPath();
  context.moveTo(x1 ?? 0, y1 ?? 0);
  context.lineTo(x2 ?? 0, y2 ?? 0);
  context.stroke();
}

/** A ring in each doubtful cell, dark within light so that it shows on every yarn. */
export function drawDoubts(context: CanvasRenderingContext2D, fit: Fitted, { grid, doubtful }: ChartReading): void {
  const width = fit.width / grid.width;
  const height = fit.height / grid.height;
  const radius = Math.max(2.5, Math.min(width, height) * 0.34);
  doubtful.forEach((isDoubtful, cell) => {
    if (!isDoubtful) return;
    const column = cell % grid.width;
    const row = Math.floor(cell / grid.width);
    context.beginPath();
    context.arc(fit.left + (column + 0.5) * width, fit.top + fit.height - (row + 0.5) * height, radius, 0, 2 * Math.PI);
    cased(context, 1.5);
  });
}

/** A box round the cell that is looked at. */
export function drawBox(
  context: CanvasRenderingContext2D,
  fit: Fitted,
  columns: number,
  rows: number,
  cell: number,
): void {
  const width = fit.width / columns;
  const height = fit.height / rows;
  const column = cell % columns;
  const row = Math.floor(cell / columns);
  context.beginPath();
  context.rect(fit.left + column * width - 2, fit.top + fit.height - (row + 1) * height - 2, width + 4, height + 4);
  cased(context, 2);
}

function cased(context: CanvasRenderingContext2D, width: number): void {
  context.globalAlpha = 1;
  context.lineWidth = width + 2;
  context.strokeStyle = PAPER;
  context.stroke();
  context.lineWidth = width;
  context.strokeStyle = INK;
  context.stroke();
}
