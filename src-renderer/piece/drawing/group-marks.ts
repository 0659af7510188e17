/** What is drawn over the fabric to show where things stand: blocks, copies, guides, centre, fold. */
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import { strokeFrame } from './frame.ts';
import type { Look } from './look.ts';

/** Pattern blocks dashed, the copies in them dotted, and a line down to their first needle, a dotted one to their last. */
export function drawGroups(
  context: CanvasRenderingContext2D,
  view: Viewport,
  groups: readonly PlacedGroup[],
  look: Look,
  rulerY: number,
): void {
  for (const { block, firstRow, lastRow, copy, across } of groups) {
    const from = Math.round(view.left(block.first)) + 0.5;
    const to = Math.round(view.left(block.last + 1)) + 0.5;
    const bottom = Math.round(view.top(firstRow - 2)) + 0.5;
    const top = Math.round(view.top(lastRow - 1)) + 0.5;
    context.lineWidth = 1;
    context.strokeStyle = look.accentOnMain;
    line(context, from, bottom, from, rulerY, []);
    line(context, to, bottom, to, rulerY, [2, 2]);
    context.setLineDash([4, 3]);
    context.strokeRect(from, top, to - from, bottom - top);
    if (copy.width * view.columnWidth >= 24) {
      for (let at = 1; at < across; at++) {
        const x = Math.round(view.left(block.first + at * copy.width)) + 0.5;
        line(context, x, top, x, bottom, [1, 3]);
      }
    }
    context.setLineDash([]);
  }
}

/**
 * Lines from the edges of the row that groups stand on down to the ruler, where
 * the piece begins wider or narrower and its own edges do not lead there.
 */
export function drawEdges(
  context: CanvasRenderingContext2D,
  view: Viewport,
  outline: Outline,
  firstRow: number,
  look: Look,
  rulerY: number,
): void {
  const [edges, castOn] = [edgesAt(outline, firstRow), edgesAt(outline, 1)];
  const bottom = view.top(firstRow - 2);
  for (const [slot, own] of [
    [edges.first, castOn.first],
    [edges.last, castOn.last],
  ] as const) {
    if (slot === own) continue;
    const x = Math.round(view.left(slot) + view.cellWidth / 2) + 0.5;
    // They cross paper and, on a piece that narrows, main.
    for (const [colour, thickness] of [
      [look.guide.outer, 3],
      [look.guide.inner, 1],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = thickness;
      line(context, x, bottom, x, rulerY, [2, 4]);
    }
  }
}

/** A frame round the group that the commands move. */
export function drawChosen(
  context: CanvasRenderingContext2D,
  view: Viewport,
  { block, firstRow, lastRow }: PlacedGroup,
  look: Look,
): void {
  const { left, right } = view.span(block.first, block.last);
  const top = view.top(lastRow - 1);
  const bottom = view.top(firstRow - 2);
  strokeFrame(context, look, () => context.rect(left - 2, top - 2, right - left + 4, bottom - top + 4));
}

/** The centre of the bed, between L1 and R1. */
export function drawCentre(
  context: CanvasRenderingContext2D,
  view: Viewport,
  outline: Outline,
  look: Look,
  rulerY: number,
): void {
  const x = Math.round(view.left(0)) + 0.5;
  const top = view.top(outline.rows - 1);
  const bottom = view.top(-1);
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
  view: Viewport,
  outline: Outline,
  facing: number,
  name: string,
  look: Look,
  font: string,
): void {
  if (facing === 0 || facing > outline.rows) return;
  const { first, last } = edgesAt(outline, facing);
  const y = Math.round(view.top(facing - 1)) + 0.5;
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

function line(context: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number, dash: number[]): void {
  context.setLineDash(dash);
  context.beginPath();
  context.moveTo(x1, y1);
  context.lineTo(x2, y2);
  context.stroke();
  context.setLineDash([]);
}
