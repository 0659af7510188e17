/**
 * One canvas and the layers that share it. Each canvas that is seen is copied
 * for the screen in every frame that draws on any of them, so what belongs
 * together stands on one; and of that no more is drawn again than has changed:
 * the cells that did, and what lay under what the pointer is on.
 */
import type { CellBox } from '@shared/grid/index.ts';
import { SceneCanvas } from 'konva/lib/Canvas.js';
import { Group } from 'konva/lib/Group.js';
import { Shape } from 'konva/lib/Shape.js';
import type { Stage } from 'konva/lib/Stage.js';
import type { ChartLayer } from './chart-layer.ts';
import type { ChartNode } from './chart-nodes.ts';
import { FoundLayer, type Size } from './konva-stage.ts';
import type { PixelBox } from './viewport.ts';

/** What is seen now. */
export interface Seen<View, Scene> {
  readonly view: View;
  readonly scene: Scene;
}

type SeenOn<View, Scene> = Seen<View, Scene> & Size & { readonly ratio: number };

/** Cells; all, since what it shows changed; all, since it is seen otherwise than it was drawn. */
type Waiting = CellBox[] | 'changed' | 'seen otherwise' | 'nothing';

export class LayerCanvas<View, Scene> {
  /** The lowest first. */
  readonly layers: readonly DrawnLayer<View, Scene>[];
  readonly #stage: Stage;
  readonly #konva: FoundLayer;
  readonly #context: CanvasRenderingContext2D;
  readonly #seen: () => Seen<View, Scene>;
  /** The frame in which it is drawn; null where none is asked for. */
  #frame: number | null = null;

  constructor(stage: Stage, layers: readonly ChartLayer<View, Scene>[], seen: () => Seen<View, Scene>) {
    this.#stage = stage;
    this.#seen = seen;
    this.#konva = new FoundLayer({ listening: layers.some(({ nodes }) => nodes !== undefined) });
    const context = this.#konva.getNativeCanvasElement().getContext('2d');
    if (!context) throw new Error('No 2D canvas');
    this.#context = context;
    stage.add(this.#konva);
    this.layers = layers.map((layer) => new DrawnLayer(layer, () => ({ ...seen(), ...this.#size })));
    this.#konva.add(...this.layers.map(({ group }) => group));
  }

  get ratio(): number {
    return this.#konva.getCanvas().getPixelRatio();
  }

  setRatio(ratio: number): void {
    if (this.ratio !== ratio) this.#konva.getCanvas().setPixelRatio(ratio);
  }

  /** Another scene is seen: has drawn with the next frame what of the layers it changes. */
  show(before: Scene, after: Scene): void {
    for (const layer of this.layers) layer.ask(layer.of.changed(before, after));
    this.#asked();
  }

  /** Has all of it drawn with the next frame. */
  refresh(): void {
    for (const layer of this.layers) layer.ask('seen otherwise');
    this.#asked();
  }

  drawWaiting(): void {
    if (this.layers.every(({ waiting }) => waiting === 'nothing')) return;
    const light = this.layers.filter(({ of }) => of.isLight);
    const heavy = this.layers.filter(({ of }) => !of.isLight);
    const parts = this.#parts();
    if (parts === null) {
      clear(this.#context, this.#whole);
      for (const layer of heavy) layer.draw(this.#konva.getCanvas(), null);
    } else {
      for (const part of parts)
        this.#within(part, () => heavy.forEach((layer) => layer.draw(this.#konva.getCanvas(), part)));
    }
    for (const layer of light) layer.draw(this.#konva.getCanvas(), null);
    for (const layer of this.layers) layer.done();
  }

  /** Nothing is drawn any more. */
  end(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
  }

  get #size(): Size & { readonly ratio: number } {
    return { width: this.#stage.width(), height: this.#stage.height(), ratio: this.ratio };
  }

  get #whole(): PixelBox {
    const { width, height } = this.#context.canvas;
    return { left: 0, top: 0, width, height };
  }

  #asked(): void {
    const { scene } = this.#seen();
    if (this.layers.every(({ of }) => of.isBlank?.(scene) === true)) {
      this.#konva.rest();
      for (const layer of this.layers) layer.done();
      return;
    }
    if (this.#konva.wake(this.#size)) for (const layer of this.layers) layer.ask('seen otherwise');
    // Konva's own asking would draw a second time what has been drawn at once meanwhile.
    if (this.layers.every(({ waiting }) => waiting === 'nothing')) return;
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      this.drawWaiting();
    });
  }

  /** The parts that are drawn again, in device pixels; null: all. */
  #parts(): PixelBox[] | null {
    const parts: PixelBox[] = [];
    for (const layer of this.layers) {
      const changed = layer.changedParts();
      if (changed === null) return null;
      parts.push(...changed);
    }
    return parts.map((part) => wholePixels(part, this.ratio));
  }

  #within(part: PixelBox, draw: () => void): void {
    const context = this.#context;
    context.save();
    const seen = context.getTransform();
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.beginPath();
    context.rect(part.left, part.top, part.width, part.height);
    context.clip();
    context.setTransform(seen);
    clear(context, part);
    draw();
    context.restore();
  }
}

/** What there is of a layer: a shape, the nodes over it and another shape over these; and what of it waits to be drawn. */
class DrawnLayer<View, Scene> {
  readonly group = new Group();
  /** Takes the nodes. */
  readonly nodeGroup = new Group();
  #waiting: Waiting = 'nothing';
  #nodes: readonly ChartNode[] = [];
  /** Where it has drawn, in CSS pixels; null: anywhere. */
  #drawn: readonly PixelBox[] | null = [];
  /** The part that it is drawn in now. */
  #part: PixelBox | null = null;
  #kept: SceneCanvas | null = null;
  #isKeptFresh = false;

  constructor(
    readonly of: ChartLayer<View, Scene>,
    private readonly seen: () => SeenOn<View, Scene>,
  ) {
    this.group.add(
      shapeOf((context) => {
        const drawn = this.#draw(context, of.draw.bind(of)) ?? null;
        if (of.isLight) this.#drawn = drawn;
      }),
      this.nodeGroup,
    );
    if (of.drawOver) this.group.add(shapeOf((context) => void this.#draw(context, of.drawOver?.bind(of))));
  }

  get waiting(): Waiting {
    return this.#waiting;
  }

  /** What of it can be dragged, where it was when it was asked for last. */
  get nodes(): readonly ChartNode[] {
    return this.#nodes;
  }

  ask(changed: boolean | readonly CellBox[] | 'seen otherwise'): void {
    if (changed === false) return;
    const { view, scene, width, height } = this.seen();
    if (this.of.nodes) this.#nodes = this.of.nodes(view, scene, { width, height });
    if (changed === 'seen otherwise' || this.#waiting === 'seen otherwise') this.#waiting = 'seen otherwise';
    else if (changed === true || this.#waiting === 'changed') this.#waiting = 'changed';
    else this.#waiting = [...(this.#waiting === 'nothing' ? [] : this.#waiting), ...changed];
  }

  /** Where it, or what lies under it, has to be drawn again, in CSS pixels; null: everywhere. */
  changedParts(): readonly PixelBox[] | null {
    if (this.#waiting === 'seen otherwise') return null;
    // What is light is drawn over all else, so what is under it is there without it first.
    if (this.of.isLight) return this.#drawn;
    if (this.#waiting === 'nothing') return [];
    const { view, scene, ...frame } = this.seen();
    return this.#waiting === 'changed' ? null : (this.of.where?.(this.#waiting, view, scene, frame) ?? null);
  }

  /** Draws it, or a part of it in device pixels that the canvas is clipped to. */
  draw(canvas: SceneCanvas, part: PixelBox | null): void {
    this.#drawn = [];
    const { scene } = this.seen();
    if (this.of.isBlank?.(scene)) return;
    const isKept = this.of.isKept?.(scene) === true;
    // While all of it moves a picture would serve no second time.
    if (!isKept || this.#waiting === 'seen otherwise' || Array.isArray(this.#waiting)) {
      this.#isKeptFresh = false;
      this.#drawOn(canvas, part);
      return;
    }
    const kept = this.#keep();
    const context = canvas.getContext()._context;
    const { left, top, width, height } = part ?? { left: 0, top: 0, width: kept.width, height: kept.height };
    context.save();
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.drawImage(kept, left, top, width, height, left, top, width, height);
    context.restore();
  }

  /** Nothing of it waits any more. */
  done(): void {
    this.#waiting = 'nothing';
  }

  #drawOn(canvas: SceneCanvas, part: PixelBox | null): void {
    this.#part = part;
    this.group.drawScene(canvas);
    this.#part = null;
  }

  /** All of it as a picture. */
  #keep(): HTMLCanvasElement {
    if (this.#kept && this.#isKeptFresh && this.#waiting === 'nothing') return this.#kept._canvas;
    const { width, height, ratio } = this.seen();
    const kept = (this.#kept ??= new SceneCanvas({ pixelRatio: ratio }));
    kept.setPixelRatio(ratio);
    // Clears it too.
    kept.setSize(width, height);
    this.#drawOn(kept, null);
    this.#isKeptFresh = true;
    return kept._canvas;
  }

  #draw(
    context: CanvasRenderingContext2D,
    draw: ChartLayer<View, Scene>['draw'] | undefined,
  ): readonly PixelBox[] | null {
    const { view, scene, ...frame } = this.seen();
    const { ratio } = frame;
    const part = this.#part && {
      left: this.#part.left / ratio,
      top: this.#part.top / ratio,
      width: this.#part.width / ratio,
      height: this.#part.height / ratio,
    };
    const boxes = Array.isArray(this.#waiting) ? this.#waiting : null;
    context.save();
    const drawn = draw?.(context, view, scene, { ...frame, boxes, part });
    context.restore();
    return drawn ?? null;
  }
}

function shapeOf(draw: (context: CanvasRenderingContext2D) => void): Shape {
  return new Shape({ listening: false, perfectDrawEnabled: false, sceneFunc: ({ _context }) => draw(_context) });
}

/** Clears device pixels. */
function clear(context: CanvasRenderingContext2D, { left, top, width, height }: PixelBox): void {
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(left, top, width, height);
  context.restore();
}

/** The device pixels that a box of CSS pixels touches. */
function wholePixels({ left, top, width, height }: PixelBox, ratio: number): PixelBox {
  const [x, y] = [Math.floor(left * ratio), Math.floor(top * ratio)];
  return {
    left: x,
    top: y,
    width: Math.ceil((left + width) * ratio) - x,
    height: Math.ceil((top + height) * ratio) - y,
  };
}
