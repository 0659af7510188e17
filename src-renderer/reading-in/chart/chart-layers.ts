/**
 * A chart that is being read, as it is seen: straightened with lines between its
 * cells, and cell by cell. Both are seen by one view, so that what is looked at
 * in one is looked at in the other.
 */
import type { Cell } from '@shared/grid/index.ts';
import {
  cellsLayer,
  drawDoubtMarks,
  lineSteps,
  strokeCased,
  Viewport,
  type CellPicture,
  type ChartLayer,
  type LineColours,
  type MarkLook,
  type Size,
} from '../../canvas/index.ts';
import { pictureLayer, type ShownPicture } from '../../canvas/picture-layer.ts';
import type { PictureView } from '../../canvas/picture-view.ts';
import type { SharedCells } from './read-part.ts';

/** Height of every chart in the pixels that its view counts in, however fine its picture is just now. */
const CHART_HEIGHT = 1000;

/** The size of a chart of the proportions of its straightened picture. */
export function chartSize(straight: Size): Size {
  return { width: (CHART_HEIGHT * straight.width) / straight.height, height: CHART_HEIGHT };
}

/** The cells of a chart of that size, as they lie in the view. */
export function cellsIn(view: PictureView, { width, height }: Size, columns: number, rows: number): Viewport {
  const across = (width * view.scale) / columns;
  const up = (height * view.scale) / rows;
  return new Viewport(across, up, view.x, view.y + height * view.scale);
}

export interface Counts {
  readonly columns: number;
  readonly rows: number;
}

/** The cell at a place of the grid, or null for none. */
export function cellOf(at: number | null, { columns }: Counts): Cell | null {
  return at === null ? null : { column: at % columns, row: Math.floor(at / columns) };
}

/** The middle of a cell on a chart of that size. */
export function middleOfCell({ column, row }: Cell, { columns, rows }: Counts, size: Size): { x: number; y: number } {
  return { x: ((column + 0.5) / columns) * size.width, y: (1 - (row + 0.5) / rows) * size.height };
}

export interface StraightScene {
  readonly chart: ShownPicture;
  /** Null while they are not known. */
  readonly counts: Counts | null;
  readonly cell: Cell | null;
  /** What two photos both show, framed. */
  readonly shared: SharedCells | null;
  /** Of the lines. */
  readonly line: string;
  readonly look: MarkLook;
}

export const straightLayers: readonly ChartLayer<PictureView, StraightScene>[] = [
  pictureLayer(({ chart }) => chart),
  {
    draw(context, view, { chart, counts, cell, shared, line, look }) {
      if (!counts) return;
      const cells = cellsIn(view, chart, counts.columns, counts.rows);
      drawLines(context, cells, counts, line);
      if (shared) drawBox(context, cells, shared, look);
      if (cell) drawBox(context, cells, cell, look);
    },
    changed: (before, after) =>
      before.chart.width !== after.chart.width ||
      before.counts?.columns !== after.counts?.columns ||
      before.counts?.rows !== after.counts?.rows ||
      !isSameCell(before.cell, after.cell) ||
      before.shared !== after.shared ||
      before.look !== after.look,
  },
];

export interface CellsScene {
  readonly size: Size;
  readonly picture: CellPicture;
  readonly doubts: readonly Cell[];
  readonly cell: Cell | null;
  readonly lines: LineColours;
  readonly look: MarkLook;
}

/** The layers of one pane: it keeps what it has drawn of the cells. */
export function readLayers(): readonly ChartLayer<PictureView, CellsScene>[] {
  const viewportOf = (view: PictureView, { size, picture: { grid } }: CellsScene): Viewport =>
    cellsIn(view, size, grid.width, grid.height);
  const cells = cellsLayer<PictureView, CellsScene>({
    picture: ({ picture }) => picture,
    parts: (view, scene) => [{ rows: { from: 0, to: scene.picture.grid.height }, viewport: viewportOf(view, scene) }],
    lines: ({ lines }) => lines,
    fabric: () => null,
  });
  return [
    { ...cells, changed: (before, after) => before.size.width !== after.size.width || cells.changed(before, after) },
    {
      draw(context, view, scene, { width, height }) {
        const viewport = viewportOf(view, scene);
        drawDoubtMarks(context, viewport, scene.doubts, scene.look, width, height);
        if (scene.cell) drawBox(context, viewport, scene.cell, scene.look);
      },
      changed: (before, after) =>
        before.size.width !== after.size.width ||
        before.picture.grid.width !== after.picture.grid.width ||
        before.picture.grid.height !== after.picture.grid.height ||
        before.doubts !== after.doubts ||
        !isSameCell(before.cell, after.cell) ||
        before.look !== after.look,
    },
  ];
}

function isSameCell(a: Cell | null, b: Cell | null): boolean {
  return a?.column === b?.column && a?.row === b?.row;
}

/** Over narrower cells than this, in pixels, a line after each would hide the photo. */
const LEAST_FINE = 8;

/** Lines between cells; every fifth and tenth from the lower left is stronger, and fine ones that would hide the photo are left out. */
function drawLines(context: CanvasRenderingContext2D, view: Viewport, { columns, rows }: Counts, colour: string): void {
  const size = Math.min(view.columnWidth, view.cellHeight);
  const steps = lineSteps(size)
    .filter(({ every }) => every > 1 || size >= LEAST_FINE)
    .map(({ every }, index) => ({ every, weight: index + 1 }));
  const [left, right] = [view.left(0), view.left(columns)];
  const [top, bottom] = [view.top(rows - 1), view.top(-1)];
  context.strokeStyle = colour;
  for (const { every, weight } of steps) {
    context.globalAlpha = [0, 0.45, 0.75, 1][weight] ?? 1;
    context.lineWidth = weight === 1 ? 1 : 1.5;
    context.beginPath();
    for (let column = 0; column <= columns; column += every) {
      context.moveTo(view.left(column), top);
      context.lineTo(view.left(column), bottom);
    }
    for (let row = 0; row <= rows; row += every) {
      context.moveTo(left, view.top(row - 1));
      context.lineTo(right, view.top(row - 1));
    }
    context.stroke();
  }
  context.globalAlpha = 1;
  context.lineWidth = 1.5;
  context.strokeRect(left, top, right - left, bottom - top);
}

/** A box round the cell that is looked at, or round several. */
function drawBox(context: CanvasRenderingContext2D, view: Viewport, cells: Cell & Partial<Size>, look: MarkLook): void {
  const { left, top, width, height } = view.pixels({ width: 1, height: 1, ...cells });
  context.beginPath();
  context.rect(left - 2, top - 2, width + 4, height + 4);
  strokeCased(context, look, 2);
}
