/** The true repeat, held by corner brackets. */
import type { CellBox } from '@shared/grid/index.ts';
import type { PixelBox, Viewport } from '../../ui/cells/index.ts';

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
  const path = bracketPath(pixels);
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

function bracketPath({ left, top, width, height }: PixelBox): Path2D {
  const path = new Path2D();
  const x = [Math.round(left) - AWAY, Math.round(left + width) + 1 + AWAY] as const;
  const y = [Math.round(top) - AWAY, Math.round(top + height) + 1 + AWAY] as const;
  const across = Math.min(LENGTH, width / 3 + AWAY);
  const up = Math.min(LENGTH, height / 3 + AWAY);
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
