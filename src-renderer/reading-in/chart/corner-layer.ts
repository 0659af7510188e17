/** The corners of a chart on its photo: their rings, the sides between them, and what lies outside veiled. */
import type { Corners } from '@shared/reading/index.ts';
import { handleNode, type HandleState } from '../../canvas/handles.ts';
import { CHART_FONT, strokeCased, type ChartLayer, type MarkLook, type Point } from '../../canvas/index.ts';
import type { ShownPicture } from '../../canvas/picture-layer.ts';
import type { PictureView } from '../../canvas/picture-view.ts';

export interface PhotoScene {
  readonly photo: ShownPicture;
  /** In pixels of the photo, round the chart; fewer than four while they are being clicked. */
  readonly corners: readonly Point[];
  /** Of each corner; empty where nothing can be taken hold of. */
  readonly handles: readonly HandleState[];
  /** Where the next side would go while corners are clicked, or null. */
  readonly next: Point | null;
  /** Charts of which one is meant, numbered from 1; empty where it is not asked. */
  readonly charts: readonly Corners[];
  readonly look: PhotoLook;
}

export interface PhotoLook extends MarkLook {
  /** Lies over what is outside the chart. */
  readonly veil: string;
}

const VEIL_STRENGTH = 0.45;
const DOT = 5;

export const cornerLayer: ChartLayer<PictureView, PhotoScene> = {
  draw(context, view, { photo, corners, handles, next, charts, look }) {
    const seen = [...corners, ...(next ? [next] : [])].map((corner) => view.seen(corner));
    const sides = new Path2D();
    seen.forEach(({ x, y }, index) => (index === 0 ? sides.moveTo(x, y) : sides.lineTo(x, y)));
    if (corners.length === 4) {
      sides.closePath();
      const outside = new Path2D(sides);
      outside.rect(view.x, view.y, photo.width * view.scale, photo.height * view.scale);
      context.globalAlpha = VEIL_STRENGTH;
      context.fillStyle = look.veil;
      context.fill(outside, 'evenodd');
      context.globalAlpha = 1;
    }
    for (const [width, colour] of [
      [5, look.casing],
      [2, look.mark],
    ] as const) {
      context.lineWidth = width;
      context.strokeStyle = colour;
      context.stroke(sides);
    }
    charts.forEach((chart, index) => drawNumbered(context, view, chart, index + 1, look));
    if (handles.length > 0) return;
    for (const { x, y } of corners.map((corner) => view.seen(corner))) {
      context.beginPath();
      context.arc(x, y, DOT, 0, 2 * Math.PI);
      strokeCased(context, look, 3);
    }
  },
  nodes: (view, { corners, handles, look }) =>
    handles.map((state, index) => handleNode(String(index), view.seen(corners[index] as Point), 'ring', state, look)),
  changed: (before, after) =>
    before.corners !== after.corners ||
    before.handles !== after.handles ||
    before.next !== after.next ||
    before.charts !== after.charts ||
    before.look !== after.look,
};

const NUMBER_SIZE = 28;

/** A broken line round a chart, and its number in the middle. */
function drawNumbered(
  context: CanvasRenderingContext2D,
  view: PictureView,
  corners: Corners,
  number: number,
  look: MarkLook,
): void {
  const seen = corners.map((corner) => view.seen(corner));
  context.save();
  context.beginPath();
  seen.forEach(({ x, y }, index) => (index === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
  context.closePath();
  context.setLineDash([8, 6]);
  strokeCased(context, look, 2);
  context.setLineDash([]);
  context.font = `600 ${NUMBER_SIZE}px ${CHART_FONT}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const middle = (along: readonly number[]): number => along.reduce((sum, at) => sum + at, 0) / along.length;
  const at = [middle(seen.map(({ x }) => x)), middle(seen.map(({ y }) => y))] as const;
  context.lineWidth = 6;
  context.strokeStyle = look.casing;
  context.strokeText(String(number), ...at);
  context.fillStyle = look.mark;
  context.fillText(String(number), ...at);
  context.restore();
}
