/** The true repeat, held by corner brackets; the near one by thin broken ones within its cells. */
import type { CellBox } from '@shared/grid/index.ts';
import type { PixelBox, Viewport } from '../../canvas/index.ts';
import type { MotifLook } from './look.ts';

const LENGTH = 28;
const THICK = 4;
/** From the edge of the cells to the middle of the bracket. */
const AWAY = 3;

/** Draws four brackets round `box`, with a line of `halo` so that they show on any yarn. */
export function drawBrackets(
  context: CanvasRenderingContext2D,
  view: Viewport,
  box: CellBox,
  colour: string,
  halo: string,
): void {
  const pixels = view.pixels(box);
  const path = bracketPath(pixels, AWAY);
  context.save();
  context.lineJoin = 'miter';
  context.lineCap = 'butt';
  context.strokeStyle = halo;
  context.lineWidth = THICK + 3;
  context.stroke(path);
  context.strokeStyle = colour;
  context.lineWidth = THICK;
  context.stroke(path);
  context.restore();
}

const NEAR_THICK = 2;
const NEAR_DASH = [5, 3];
/** A near repeat and the true one may share corners; the near one stands inside. */
const NEAR_AWAY = -5;

/** Draws four thin, broken brackets inside `box`: a repeat that is not quite one. */
export function drawNearBrackets(
  context: CanvasRenderingContext2D,
  view: Viewport,
  box: CellBox,
  look: MotifLook,
): void {
  const path = bracketPath(view.pixels(box), NEAR_AWAY);
  context.save();
  context.strokeStyle = look.paper;
  context.lineWidth = NEAR_THICK + 3;
  context.stroke(path);
  context.setLineDash(NEAR_DASH);
  context.strokeStyle = look.accent;
  context.lineWidth = NEAR_THICK;
  context.stroke(path);
  context.restore();
}

/** `away` is from the edge of the cells outwards to the middle of the bracket. */
function bracketPath({ left, top, width, height }: PixelBox, away: number): Path2D {
  const path = new Path2D();
  const x = [Math.round(left) - away, Math.round(left + width) + 1 + away] as const;
  const y = [Math.round(top) - away, Math.round(top + height) + 1 + away] as const;
  const across = Math.min(LENGTH, Math.max(0, width / 3 + away));
  const up = Math.min(LENGTH, Math.max(0, height / 3 + away));
  for (const [cornerX, stepX] of [
    [x[0], across],
    [x[1], -across],
  ] as const) {
    for (const [cornerY, stepY] of [
      [y[0], up],
      [y[1], -up],
    ] as const) {
      path.moveTo(cornerX + stepX, cornerY);
      path.lineTo(cornerX, cornerY);
      path.lineTo(cornerX, cornerY + stepY);
    }
  }
  return path;
}
