/** What is drawn over the fabric to show where things stand: blocks, copies, guides, centre, fold. */
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import type { Point, Viewport } from '../../canvas/index.ts';
import { strokeFrame } from './frame.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';

/** A pattern block dashed, the copies in it dotted, and a line down to its first needle, a dotted one to its last. */
export function drawGroup(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { block, firstRow, lastRow, copy, across }: PlacedGroup,
  look: Look,
  rulerY: number,
): void {
  const bottom = crisp(laid.at(firstRow).top(firstRow - 2));
  const top = crisp(laid.at(lastRow).top(lastRow - 1));
  const edge =
    (slot: number) =>
    (view: Viewport): number =>
      crisp(view.left(slot));
  context.lineWidth = 1;
  context.strokeStyle = look.accentOnMain;
  path(context, laid.wayDown(firstRow, bottom, rulerY, edge(block.first)), []);
  path(context, laid.wayDown(firstRow, bottom, rulerY, edge(block.last + 1)), [2, 2]);
  context.setLineDash([4, 3]);
  context.beginPath();
  trace(context, laid.corners(block.first, block.last, firstRow, lastRow), crisp);
  context.closePath();
  context.stroke();
  if (copy.width * laid.at(firstRow).columnWidth >= 24) {
    for (let at = 1; at < across; at++) {
      path(context, laid.wayDown(lastRow, top, bottom, edge(block.first + at * copy.width)), [1, 3]);
    }
  }
  context.setLineDash([]);
}

/**
 * Lines from the edges of the row that groups stand on down to the ruler, where
 * the piece begins wider or narrower and its own edges do not lead there.
 */
export function drawEdges(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  outline: Outline,
  firstRow: number,
  look: Look,
  rulerY: number,
): void {
  const [edges, castOn] = [edgesAt(outline, firstRow), edgesAt(outline, 1)];
  const bottom = laid.at(firstRow).top(firstRow - 2);
  for (const [slot, own] of [
    [edges.first, castOn.first],
    [edges.last, castOn.last],
  ] as const) {
    if (slot === own) continue;
    const way = laid.wayDown(firstRow, bottom, rulerY, (view) => crisp(view.left(slot) + view.cellWidth / 2));
    // They cross paper and, on a piece that narrows, main.
    for (const [colour, thickness] of [
      [look.guide.outer, 3],
      [look.guide.inner, 1],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = thickness;
      path(context, way, [2, 4]);
    }
  }
}

/** A frame round the group that the commands move. */
export function drawChosen(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { block, firstRow, lastRow }: PlacedGroup,
  look: Look,
): void {
  strokeFrame(context, look, () => {
    trace(context, laid.corners(block.first, block.last, firstRow, lastRow, 2));
    context.closePath();
  });
}

/** The centre of the bed, between L1 and R1. */
export function drawCentre(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  outline: Outline,
  look: Look,
  rulerY: number,
): void {
  // All sections are centred on it.
  const x = crisp(laid.whole.left(0));
  const top = laid.at(outline.rows).top(outline.rows - 1);
  const bottom = laid.castOn;
  context.lineWidth = 1;
  context.strokeStyle = look.accent;
  line(context, x, top - 10, x, top, [5, 4]);
  line(context, x, bottom, x, rulerY + 12, []);
  context.strokeStyle = look.accentOnMain;
  line(context, x, top, x, bottom, [5, 4]);
}

/** The fold of a hem, above the `facing` rows of its hidden half, from edge to edge, with its name on it. */
export function drawFold(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  outline: Outline,
  facing: number,
  name: string,
  look: Look,
  font: string,
): void {
  if (facing === 0 || facing > outline.rows) return;
  const { first, last } = edgesAt(outline, facing);
  const view = laid.at(facing);
  const y = crisp(view.top(facing - 1));
  const { left, right } = view.span(first, last);
  context.lineWidth = 1.5;
  context.strokeStyle = look.onMain;
  line(context, left, y, right, y, [10, 3, 2, 3]);
  context.font = `400 12px ${font}`;
  context.fillStyle = look.onMain;
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
  context.fillText(name, Math.max(left, 0) + 8, y - 4);
}

/** The middle of a pixel, where a fine line is sharp. */
function crisp(at: number): number {
  return Math.round(at) + 0.5;
}

/** Adds a line from point to point to the context's path. */
export function trace(
  context: CanvasRenderingContext2D,
  points: readonly Point[],
  place = (at: number): number => at,
): void {
  points.forEach(({ x, y }, index) => {
    if (index === 0) context.moveTo(place(x), place(y));
    else context.lineTo(place(x), place(y));
  });
}

function path(context: CanvasRenderingContext2D, points: readonly Point[], dash: number[]): void {
  context.setLineDash(dash);
  context.beginPath();
  trace(context, points);
  context.stroke();
  context.setLineDash([]);
}

function line(context: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number, dash: number[]): void {
  context.setLineDash(dash);
  context.beginPath();
  context.moveTo(x1, y1);
  context.lineTo(x2, y2);
  context.stroke();
  context.setLineDash([]);
}
