/** The corners of a chart on its photo: their rings, the sides between them, and what lies outside veiled. */
import {
  handleNode,
  strokeCased,
  type ChartLayer,
  type HandleState,
  type MarkLook,
  type PictureView,
  type Point,
  type ShownPicture,
} from '../../canvas/index.ts';

export interface PhotoScene {
  readonly photo: ShownPicture;
  /** In pixels of the photo, round the chart; fewer than four while they are being clicked. */
  readonly corners: readonly Point[];
  /** Of each corner; empty where nothing can be taken hold of. */
  readonly handles: readonly HandleState[];
  /** Where the next side would go while corners are clicked, or null. */
  readonly next: Point | null;
  readonly look: PhotoLook;
}

export interface PhotoLook extends MarkLook {
  /** Lies over what is outside the chart. */
  readonly veil: string;
}

const VEIL_STRENGTH = 0.45;
const DOT = 5;

export const cornerLayer: ChartLayer<PictureView, PhotoScene> = {
  draw(context, view, { photo, corners, handles, next, look }) {
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
    before.look !== after.look,
};
