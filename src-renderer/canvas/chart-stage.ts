/**
 * A chart on the screen: its layers, each of them drawn again in the next frame
 * when what it shows has changed. Usable without Svelte.
 */
import { Konva } from 'konva/lib/Global.js';
import type { ChartLayer, ChartView } from './chart-layer.ts';
import { ChartNodes } from './chart-nodes.ts';
import type { Held, Point } from './gestures.ts';
import { FindingStage, type Size } from './konva-stage.ts';
import { LayerCanvas } from './layer-canvas.ts';

// A draw is asked for where it is needed; Konva's own would draw twice.
Konva.autoDrawEnabled = false;

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
