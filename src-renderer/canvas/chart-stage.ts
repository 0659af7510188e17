/**
 * A chart on the screen: its layers, each of them a Konva layer that is drawn
 * again in the next frame when what it shows has changed. Usable without Svelte.
 */
import type { CellBox } from '@shared/grid/index.ts';
import { Konva } from 'konva/lib/Global.js';
import { Group } from 'konva/lib/Group.js';
import { Shape } from 'konva/lib/Shape.js';
import type { Stage } from 'konva/lib/Stage.js';
import { ChartNodes, type ChartNode } from './chart-nodes.ts';
import type { Held, Point } from './gestures.ts';
import { FindingStage, FoundLayer, type Size } from './konva-stage.ts';

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
  /** The cells to draw again over what is there; null: all, on a canvas that is clear. */
  readonly boxes: readonly CellBox[] | null;
}

/** A layer of a bench's chart. */
export interface ChartLayer<View, Scene> {
  draw(context: CanvasRenderingContext2D, view: View, scene: Scene, frame: Frame): void;
  /** What of it can be dragged; stands over what is drawn. */
  nodes?(view: View, scene: Scene, size: Size): readonly ChartNode[];
  /** Draws what stands over the nodes. */
  drawOver?(context: CanvasRenderingContext2D, view: View, scene: Scene, frame: Frame): void;
  /** True if the second is drawn otherwise than the first; or the cells in which alone they differ. */
  changed(before: Scene, after: Scene): boolean | readonly CellBox[];
  /** True if nothing of the scene is on it, and so for each scene that is not `changed` from that one. */
  isBlank?(scene: Scene): boolean;
}

export class ChartStage<View extends ChartView<View>, Scene> {
  readonly #konva: FindingStage;
  readonly #layers: readonly DrawnLayer<View, Scene>[];
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
    this.#konva = new FindingStage({ container, ...size, listening: layers.some(hasNodes) });
    this.#nodes = new ChartNodes(this.#konva);
    this.#layers = layers.map(
      (layer) => new DrawnLayer(this.#konva, layer, () => ({ view: this.#view, scene: this.#scene })),
    );
    this.#drawAll();
  }

  /** Shows another scene: each layer says whether, and where, it is drawn again for it. */
  show(scene: Scene): void {
    const before = this.#scene;
    if (scene === before) return;
    this.#scene = scene;
    for (const layer of this.#layers) layer.ask(layer.of.changed(before, scene));
    this.#nodes.place(this.#layers);
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
    if (!isOther && this.#layers.every((layer) => layer.ratio === ratio)) return;
    for (const layer of this.#layers) layer.setRatio(ratio);
    if (isOther) this.#konva.resizeTo(size);
    // A canvas of another size is blank until drawn; waiting for the next frame would flash.
    this.#drawAll();
  }

  /** Draws all of it again in the next frame: a font is there. */
  refresh(): void {
    for (const layer of this.#layers) layer.ask(true);
    this.#nodes.place(this.#layers);
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
    for (const layer of this.#layers) layer.drawWaiting();
  }

  destroy(): void {
    for (const layer of this.#layers) layer.end();
    this.#konva.destroy();
  }

  #drawAll(): void {
    this.refresh();
    this.drawNow();
  }
}

function hasNodes<View, Scene>(layer: ChartLayer<View, Scene>): boolean {
  return layer.nodes !== undefined;
}

/** One Konva layer: a shape, the nodes over it and another shape over these; and what of it waits to be drawn. */
class DrawnLayer<View, Scene> {
  /** Takes the nodes. */
  readonly group = new Group();
  readonly #stage: Stage;
  readonly #konva: FoundLayer;
  readonly #context: CanvasRenderingContext2D;
  /** Cells; `all`; or nothing, and whoever has it drawn then means all. */
  #waiting: CellBox[] | 'all' | 'nothing' = 'nothing';
  #nodes: readonly ChartNode[] = [];
  /** The frame in which it is drawn; null where none is asked for. */
  #frame: number | null = null;

  constructor(
    stage: Stage,
    readonly of: ChartLayer<View, Scene>,
    private readonly shown: () => { readonly view: View; readonly scene: Scene },
  ) {
    this.#stage = stage;
    this.#konva = new FoundLayer({ listening: hasNodes(of), clearBeforeDraw: false });
    const context = this.#konva.getNativeCanvasElement().getContext('2d');
    if (!context) throw new Error('No 2D canvas');
    this.#context = context;
    stage.add(this.#konva);
    this.#konva.add(
      shapeOf(() => {
        const boxes = typeof this.#waiting === 'string' ? null : this.#waiting;
        this.#waiting = 'nothing';
        if (!boxes) clear(this.#context);
        this.#draw(of.draw.bind(of), boxes);
      }),
      this.group,
    );
    if (of.drawOver) this.#konva.add(shapeOf(() => this.#draw(of.drawOver?.bind(of), null)));
  }

  /** What of it can be dragged, where it was when it was asked for last. */
  get nodes(): readonly ChartNode[] {
    return this.#nodes;
  }

  get #size(): Size {
    return { width: this.#stage.width(), height: this.#stage.height() };
  }

  get ratio(): number {
    return this.#konva.getCanvas().getPixelRatio();
  }

  setRatio(ratio: number): void {
    if (this.ratio !== ratio) this.#konva.getCanvas().setPixelRatio(ratio);
  }

  /** Has it drawn with the next frame, as far as it has changed. */
  ask(changed: boolean | readonly CellBox[]): void {
    if (changed === false) return;
    const { view, scene } = this.shown();
    if (this.of.nodes) this.#nodes = this.of.nodes(view, scene, this.#size);
    if (this.of.isBlank?.(scene)) {
      this.#waiting = 'nothing';
      this.#konva.rest();
      return;
    }
    const isNew = this.#konva.wake(this.#size);
    if (changed === true || isNew) this.#waiting = 'all';
    else if (this.#waiting === 'nothing') this.#waiting = [...changed];
    else if (this.#waiting !== 'all') this.#waiting.push(...changed);
    // Konva's own asking would draw a second time what has been drawn at once meanwhile.
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      this.drawWaiting();
    });
  }

  drawWaiting(): void {
    if (this.#waiting !== 'nothing') this.#konva.draw();
  }

  /** Nothing is drawn any more. */
  end(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
  }

  #draw(draw: ChartLayer<View, Scene>['draw'] | undefined, boxes: readonly CellBox[] | null): void {
    const context = this.#context;
    const { view, scene } = this.shown();
    context.save();
    draw?.(context, view, scene, { ...this.#size, ratio: this.ratio, boxes });
    context.restore();
  }
}

function shapeOf(sceneFunc: () => void): Shape {
  return new Shape({ listening: false, perfectDrawEnabled: false, sceneFunc });
}

function clear(context: CanvasRenderingContext2D): void {
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, context.canvas.width, context.canvas.height);
  context.restore();
}
