/**
 * A chart on the screen: its layers, each of them drawn again in the next frame
 * when what it shows has changed. Usable without Svelte.
 */
import type { CellBox } from '@shared/grid/index.ts';
import { Konva } from 'konva/lib/Global.js';
import { ChartNodes, type ChartNode } from './chart-nodes.ts';
import type { Held, Point } from './gestures.ts';
import { FindingStage, type Size } from './konva-stage.ts';
import { LayerCanvas } from './layer-canvas.ts';
import type { PixelBox } from './viewport.ts';

export type { Size } from './konva-stage.ts';

// A draw is asked for where it is needed; Konva's own would draw twice.
Konva.autoDrawEnabled = false;

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
  /** One that {@link isLight} gives where it has drawn, in CSS pixels; null: anywhere. */
  draw(
    context: CanvasRenderingContext2D,
    view: View,
    scene: Scene,
    frame: Frame,
  ): readonly PixelBox[] | null | undefined | void;
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

export class ChartStage<View extends ChartView<View>, Scene> {
  readonly #konva: FindingStage;
  readonly #canvases: readonly LayerCanvas<View, Scene>[];
  readonly #nodes: ChartNodes;
  #view: View;
  #scene: Scene;

  /** Puts the layers into `container`, the lowest first, and draws them. */
  constructor(
    container: HTMLDivElement,
    layers: readonly ChartLayer<View, Scene>[],
    view: View,
    scene: Scene,
    size: Size,
  ) {
    this.#view = view;
    this.#scene = scene;
    const konva = new FindingStage({ container, ...size, listening: layers.some(({ nodes }) => nodes !== undefined) });
    this.#konva = konva;
    this.#nodes = new ChartNodes(konva);
    const seen = () => ({ view: this.#view, scene: this.#scene });
    this.#canvases = sharing(layers).map((shared) => new LayerCanvas(konva, shared, seen));
    this.#drawAll();
  }

  /** Shows another scene: each layer says whether, and where, it is drawn again for it. */
  show(scene: Scene): void {
    const before = this.#scene;
    if (scene === before) return;
    this.#scene = scene;
    for (const canvas of this.#canvases) canvas.show(before, scene);
    this.#placeNodes();
  }

  look(view: View): void {
    if (view.isSame(this.#view)) return;
    this.#view = view;
    this.refresh();
  }

  /** The view has another size, or moved to a screen of another pixel density. */
  resize(size: Size): void {
    const ratio = window.devicePixelRatio;
    if (Konva.pixelRatio !== ratio) Konva.pixelRatio = ratio;
    const { width, height } = this.#konva.getSize();
    const isOther = width !== size.width || height !== size.height;
    if (!isOther && this.#canvases.every((canvas) => canvas.ratio === ratio)) return;
    for (const canvas of this.#canvases) canvas.setRatio(ratio);
    if (isOther) this.#konva.resizeTo(size);
    // A canvas of another size is blank until drawn; waiting for the next frame would flash.
    this.#drawAll();
  }

  /** Draws all of it again in the next frame: a font is there. */
  refresh(): void {
    for (const canvas of this.#canvases) canvas.refresh();
    this.#placeNodes();
  }

  /** The key of what can be dragged under a pixel, or null. */
  nodeAt(at: Point): string | null {
    return this.#nodes.keyAt(at);
  }

  /** Has what is pressed dragged, and `by` told of it. */
  hold(key: string, by: Held): Held {
    return this.#nodes.hold(key, by);
  }

  /** Draws now what waits for the next frame; for measuring. */
  drawNow(): void {
    for (const canvas of this.#canvases) canvas.drawWaiting();
  }

  destroy(): void {
    for (const canvas of this.#canvases) canvas.end();
    this.#konva.destroy();
  }

  #placeNodes(): void {
    this.#nodes.place(this.#canvases.flatMap(({ layers }) => layers));
  }

  #drawAll(): void {
    this.refresh();
    this.drawNow();
  }
}

/** The layers of each canvas, the lowest first. */
function sharing<View, Scene>(layers: readonly ChartLayer<View, Scene>[]): ChartLayer<View, Scene>[][] {
  const canvases: ChartLayer<View, Scene>[][] = [];
  for (const layer of layers) {
    const below = layer.sharesCanvas && canvases.at(-1);
    if (below) below.push(layer);
    else canvases.push([layer]);
  }
  return canvases;
}
