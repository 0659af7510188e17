/** Lines that are seen on any picture and any yarn: one colour within another. */

/** Colours of marks on a picture, one within the other. */
export interface MarkLook {
  readonly mark: string;
  readonly casing: string;
}

/** Strokes the path that stands: the mark, and its casing on both sides of it. */
export function strokeCased(context: CanvasRenderingContext2D, { mark, casing }: MarkLook, width: number): void {
  context.lineWidth = width + 3;
  context.strokeStyle = casing;
  context.stroke();
  context.lineWidth = width;
  context.strokeStyle = mark;
  context.stroke();
}
