/** What a chart on the screen is made of: layers, and what each says of itself. */
import type { CellBox } from '@shared/grid/index.ts';
import type { ChartNode } from './chart-nodes.ts';
import type { Size } from './konva-stage.ts';
import type { PixelBox } from './viewport.ts';

/** How a chart is seen; a view that is the same needs no drawing. */
export interface ChartView<View> {
  isSame(other: View): boolean;
}

/** What a layer is drawn on. */
export interface Frame {
  /** Size of the view in CSS pixels, in which a layer draws. */
  readonly width: number;
  readonly height: number;
  /** Device pixels to a CSS pixel. */
  readonly ratio: number;
  /** The cells in which alone the scene differs from the one that was drawn before; null: that is not known. */
  readonly boxes: readonly CellBox[] | null;
  /** The part of the view that is drawn again, which is clear and beside which nothing can be drawn; null: all. */
  readonly part: PixelBox | null;
}

/** A layer of a bench's chart. */
export interface ChartLayer<View, Scene> {
  /** One that {@link isLight} gives where it has drawn, in CSS pixels; anywhere, if it gives nothing. */
  draw(context: CanvasRenderingContext2D, view: View, scene: Scene, frame: Frame): readonly PixelBox[] | null | void;
  /** What of it can be dragged; stands over what is drawn. */
  nodes?(view: View, scene: Scene, size: Size): readonly ChartNode[];
  /** Draws what stands over the nodes. */
  drawOver?(context: CanvasRenderingContext2D, view: View, scene: Scene, frame: Frame): void;
  /** True if the second is drawn otherwise than the first; or the cells in which alone they differ. */
  changed(before: Scene, after: Scene): boolean | readonly CellBox[];
  /** What such cells take of the view, with all that a change of theirs reaches. */
  where?(boxes: readonly CellBox[], view: View, scene: Scene, size: Size & Pick<Frame, 'ratio'>): readonly PixelBox[];
  /** True if nothing of the scene is on it, and so for each scene that is not `changed` from that one. */
  isBlank?(scene: Scene): boolean;
  /** It stands on the canvas of the layer below it. */
  readonly sharesCanvas?: true;
  /** It is little and changes often, as what the pointer is on does: it is the uppermost on its canvas and taken away each time. */
  readonly isLight?: true;
  /** Drawing it takes long: it is kept as a picture, from which parts are drawn. */
  isKept?(scene: Scene): boolean;
}
