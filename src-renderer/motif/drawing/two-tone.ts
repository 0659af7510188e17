/** A thin line seen on light and dark yarns alike: the accent within a line of paper. */
import type { MotifLook } from './look.ts';

/** Strokes `path`, dashed if `dash` holds lengths in pixels, `thick` pixels strong. */
export function strokeTwoTone(
  context: CanvasRenderingContext2D,
  look: MotifLook,
  path: Path2D,
  dash: readonly number[],
  { thick = 1.25 } = {},
): void {
  context.save();
  context.setLineDash([...dash]);
  context.strokeStyle = look.guide.outer;
  context.lineWidth = thick + 1.75;
  context.stroke(path);
  context.strokeStyle = look.guide.inner;
  context.lineWidth = thick;
  context.stroke(path);
  context.restore();
}
