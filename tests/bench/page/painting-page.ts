/**
 * Painting cells with the pointer, timed in the page: as the Motif bench does
 * it, on a bare 2D canvas, and with one Konva node a cell.
 *
 * Drawing is what happens between a changed grid and its pixels; a whole frame
 * begins at the pointer event, so it has the change and its undo step too. One
 * pixel is read back, because until then a drawing may only be queued.
 */
import Konva from 'konva/lib/Core.js';
import { Rect } from 'konva/lib/shapes/Rect.js';
import { patchCells, type Cell, type Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { changeOf, commit, paintCells, projectAround, startHistory, START_YARNS } from '@shared/project/index.ts';
import {
  CellBitmap,
  cellsLayer,
  ChartStage,
  DeviceView,
  drawCells,
  reachOf,
  type CellPicture,
  type Viewport,
} from '../../../src-renderer/canvas/index.ts';
import { dragInTurn } from './dragging.ts';
import { holdUpFrame } from './held-up.ts';
import { panInTurn } from './panning.ts';
import { paintFollowing, showFollowing } from './following.ts';
import {
  COLOURS,
  drawing,
  hostElement,
  LINES,
  noTimes,
  paintFrame,
  readPixel,
  SIZE,
  STROKE,
  VIEW,
  VIEWPORT,
  WARM_UP,
  type FrameTimes,
  type Painter,
} from './painter.ts';

function flipped(grid: Grid, { column, row }: Cell): [index: number, to: number] {
  const index = row * grid.width + column;
  return [index, 1 - (grid.cells[index] as number)];
}

/** As the Motif bench: an immutable project with its history, shown by a stage with its cells. */
function programPainter(host: HTMLDivElement): Painter {
  let history = startHistory(projectAround('bench', 'bench', drawing(), 0, 'worn', START_YARNS));
  let painted = 0;
  const motifNow = (): Motif => history.project.motifs[0] as Motif;
  const picture = (): CellPicture => ({ grid: motifNow().grid, colours: COLOURS, surround: null });
  const container = document.createElement('div');
  host.append(container);
  const cells = cellsLayer<Viewport, CellPicture>({
    picture: (shown) => shown,
    parts: (viewport) => [{ rows: { from: 0, to: SIZE.height }, viewport }],
    lines: () => LINES,
    fabric: () => null,
  });
  const stage = new ChartStage(container, [cells], VIEWPORT, picture(), VIEW);
  const context = container.querySelector('canvas')?.getContext('2d') as CanvasRenderingContext2D;
  return {
    edit(x, y) {
      const motif = motifNow();
      const patch = patchCells(motif.grid, [flipped(motif.grid, VIEWPORT.cellAt(x, y))]);
      const gesture = `stroke ${Math.floor(painted++ / STROKE)}`;
      history = commit(history, changeOf('draw', paintCells(motif.id, patch)), gesture);
    },
    draw(x, y) {
      stage.show(picture());
      stage.drawNow();
      holdUpFrame();
      readPixel(context, x, y);
    },
    destroy: () => stage.destroy(),
  };
}

/**
 * The same drawing with nothing around it: one grid changed in place, one
 * canvas. `isWhole`: the whole view is drawn again each time, which is the
 * plain way to do it; otherwise only the cell that changed.
 */
function barePainter(host: HTMLDivElement, isWhole: boolean): Painter {
  const picture: CellPicture = { grid: drawing(), colours: COLOURS, surround: null };
  const bitmap = new CellBitmap(picture);
  const canvas = document.createElement('canvas');
  canvas.width = VIEW.width;
  canvas.height = VIEW.height;
  host.append(canvas);
  const context = canvas.getContext('2d') as CanvasRenderingContext2D;
  const view = new DeviceView(VIEWPORT, VIEW.width, VIEW.height, 1);
  drawCells(context, view, picture, bitmap, LINES, null);
  return {
    edit(x, y) {
      const [index, to] = flipped(picture.grid, VIEWPORT.cellAt(x, y));
      picture.grid.cells[index] = to;
    },
    draw(x, y) {
      const box = { ...VIEWPORT.cellAt(x, y), width: 1, height: 1 };
      bitmap.paint(picture, [box]);
      const part = isWhole ? { left: 0, top: 0, ...VIEW } : reachOf(view, box);
      context.save();
      context.beginPath();
      context.rect(part.left, part.top, part.width, part.height);
      context.clip();
      context.clearRect(part.left, part.top, part.width, part.height);
      drawCells(context, view, picture, bitmap, LINES, isWhole ? null : part);
      context.restore();
      readPixel(context, x, y);
    },
    destroy: () => canvas.remove(),
  };
}

/** What a scene graph invites to: a node for each cell, and the layer drawn again. */
function nodePainter(host: HTMLDivElement): Painter {
  const grid = drawing();
  const container = document.createElement('div');
  host.append(container);
  const stage = new Konva.Stage({ container, ...VIEW, listening: false });
  const layer = new Konva.Layer({ listening: false });
  const nodes = Array.from(grid.cells, (cell, index) => {
    const column = index % grid.width;
    const row = Math.floor(index / grid.width);
    return new Rect({
      x: VIEWPORT.left(column),
      y: VIEWPORT.top(row),
      width: VIEWPORT.cellWidth,
      height: VIEWPORT.cellHeight,
      fill: COLOURS[cell] as string,
      stroke: LINES.plain,
      strokeWidth: 1,
      listening: false,
      perfectDrawEnabled: false,
    });
  });
  for (const node of nodes) layer.add(node);
  stage.add(layer);
  layer.draw();
  const context = layer.getNativeCanvasElement().getContext('2d') as CanvasRenderingContext2D;
  return {
    edit(x, y) {
      const [index, to] = flipped(grid, VIEWPORT.cellAt(x, y));
      grid.cells[index] = to;
      nodes[index]?.fill(COLOURS[to] as string);
    },
    draw(x, y) {
      layer.draw();
      readPixel(context, x, y);
    },
    destroy: () => stage.destroy(),
  };
}

/** Times by who paints. */
export interface PaintingTimes {
  readonly program: FrameTimes;
  /** A bare canvas, the whole view each time. */
  readonly bare: FrameTimes;
  /** A bare canvas, only the cell that changed. */
  readonly bareCell: FrameTimes;
}

/** All paint the same cells in turn. */
function paintInTurn(frames: number): PaintingTimes {
  const host = hostElement();
  const painters = {
    program: programPainter(host),
    bare: barePainter(host, true),
    bareCell: barePainter(host, false),
  };
  const names = Object.keys(painters) as (keyof PaintingTimes)[];
  const times = { program: noTimes(), bare: noTimes(), bareCell: noTimes() };
  for (let frame = -WARM_UP; frame < frames; frame++) {
    // Whoever goes first may find the caches cold; so they take turns at that too.
    const order = names.map((_, at) => names[(at + Math.abs(frame)) % names.length] as keyof PaintingTimes);
    for (const name of order) paintFrame(painters[name], frame, frame < 0 ? null : times[name]);
  }
  for (const name of names) painters[name].destroy();
  return times;
}

/** Times of frames with one node a cell. */
function paintNodes(frames: number): FrameTimes {
  const painter = nodePainter(hostElement());
  const times = noTimes();
  for (let frame = 0; frame < frames; frame++) paintFrame(painter, frame, times);
  painter.destroy();
  return times;
}

/** What the runner calls. */
const bench = { paintInTurn, paintFollowing, showFollowing, paintNodes, dragInTurn, panInTurn };
export type PaintingBench = typeof bench;

Object.assign(globalThis, { bench });
