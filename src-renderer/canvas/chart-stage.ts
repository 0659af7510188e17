/**
 * A chart on the screen: its layers, each of them a Konva layer that is drawn
 * again in the next frame when what it shows has changed. Usable without Svelte.
 */
import type { CellBox } from '@shared/grid/index.ts';
import Konva from 'konva/lib/Core.js';

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
  /** The cells to draw again over what is there; null: all, on a canvas that is clear. */
  readonly boxes: readonly CellBox[] | null;
}

/** A layer of a bench's chart. */
export interface ChartLayer<View, Scene> {
  draw(context: CanvasRenderingContext2D, view: View, scene: Scene, frame: Frame): void;
  /** True if the second is drawn otherwise than the first; or the cells in which alone they differ. */
  changed(before: Scene, after: Scene): boolean | readonly CellBox[];
}

/** Size in CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

export class ChartStage<View extends ChartView<View>, Scene> {
  readonly #konva: Konva.Stage;
  readonly #layers: readonly DrawnLayer<View, Scene>[];
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
    this.#konva = new Konva.Stage({ container, ...size, listening: false });
    this.#layers = layers.map(
      (layer) =>
        new DrawnLayer(this.#konva, layer, (context, frame) => layer.draw(context, this.#view, this.#scene, frame)),
    );
    this.#drawAll();
  }

  /** Shows another scene: each layer says whether, and where, it is drawn again for it. */
  show(scene: Scene): void {
    const before = this.#scene;
    if (scene === before) return;
    this.#scene = scene;
    for (const layer of this.#layers) layer.ask(layer.of.changed(before, scene));
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
    for (const layer of this.#layers) layer.setRatio(ratio);
    this.#konva.size(size);
    // A canvas of another size is blank until drawn; waiting for the next frame would flash.
    this.#drawAll();
  }

  /** Draws all of it again in the next frame: a font is there. */
  refresh(): void {
    for (const layer of this.#layers) layer.ask(true);
  }

  /** Draws now what waits for the next frame; for measuring. */
  drawNow(): void {
    for (const layer of this.#layers) layer.drawWaiting();
  }

  destroy(): void {
    this.#konva.destroy();
  }

  #drawAll(): void {
    this.refresh();
    this.drawNow();
  }
}

/** One Konva layer with one shape on it, and what of it waits to be drawn. */
class DrawnLayer<View, Scene> {
  readonly #konva: Konva.Layer;
  /** Cells; `all`; or nothing, and whoever has it drawn then means all. */
  #waiting: CellBox[] | 'all' | 'nothing' = 'nothing';

  constructor(
    stage: Konva.Stage,
    readonly of: ChartLayer<View, Scene>,
    draw: (context: CanvasRenderingContext2D, frame: Frame) => void,
  ) {
    this.#konva = new Konva.Layer({ listening: false, clearBeforeDraw: false });
    stage.add(this.#konva);
    this.#konva.add(
      new Konva.Shape({
        listening: false,
        perfectDrawEnabled: false,
        sceneFunc: () => {
          const canvas = this.#konva.getNativeCanvasElement();
          const context = canvas.getContext('2d');
          if (!context) throw new Error('No 2D canvas');
          const boxes = typeof this.#waiting === 'string' ? null : this.#waiting;
          this.#waiting = 'nothing';
          if (!boxes) clear(context);
          context.save();
          draw(context, { width: stage.width(), height: stage.height(), ratio: this.#ratio, boxes });
          context.restore();
        },
      }),
    );
  }

  get #ratio(): number {
    return this.#konva.getCanvas().getPixelRatio();
  }

  setRatio(ratio: number): void {
    if (this.#ratio !== ratio) this.#konva.getCanvas().setPixelRatio(ratio);
  }

  /** Has it drawn with the next frame, as far as it has changed. */
  ask(changed: boolean | readonly CellBox[]): void {
    if (changed === false) return;
    if (changed === true) this.#waiting = 'all';
    else if (this.#waiting === 'nothing') this.#waiting = [...changed];
    else if (this.#waiting !== 'all') this.#waiting.push(...changed);
    this.#konva.batchDraw();
  }

  drawWaiting(): void {
    if (this.#waiting !== 'nothing') this.#konva.draw();
  }
}

function clear(context: CanvasRenderingContext2D): void {
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, context.canvas.width, context.canvas.height);
  context.restore();
}
