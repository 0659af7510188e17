/**
 * Konva's stage and layer without what costs here and gives nothing: pictures
 * out of sight to find shapes in, painted with each drawing and read back three
 * times for each move of the pointer; and drawing twice when the size changes.
 */
import { Layer, type LayerConfig } from 'konva/lib/Layer.js';
import type { Shape } from 'konva/lib/Shape.js';
import { Stage } from 'konva/lib/Stage.js';
import type { Point } from './gestures.ts';

/** In CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Finds shapes as it is told to, and is deaf to a pointer that drags none of them: no shape listens to that. */
export class FindingStage extends Stage {
  shapeAt: (at: Point) => Shape | null = () => null;
  /** Whether a shape is pressed, and may be dragged. */
  isHolding: () => boolean = () => false;

  override getIntersection(at: Point | null): Shape | null {
    return at && this.shapeAt(at);
  }

  /** Sizes all layers once, and draws none: Konva would do both for width and height each. */
  resizeTo({ width, height }: Size): void {
    this.attrs.width = width;
    this.attrs.height = height;
    this._resizeDOM();
  }

  override _resizeDOM(): void {
    const { width, height } = this.getSize();
    // It is there once the stage is built.
    if (this.content) Object.assign(this.content.style, { width: `${width}px`, height: `${height}px` });
    for (const layer of this.children) layer._setSize({ width, height });
  }

  override _pointermove(event: TouchEvent | MouseEvent | PointerEvent): void {
    // Konva asks where the stage stands, for which all that a stroke has changed so far is laid out.
    if (this.isHolding()) super._pointermove(event);
  }
}

/**
 * Has no picture to find shapes in, nor room for one: that takes as long to be
 * had as a layer's own. And it rests while nothing is on it, as it does when it
 * is new: a canvas is neither allocated nor handed to the screen with each frame.
 */
export class FoundLayer extends Layer {
  #rests = true;
  #size: Size = { width: 0, height: 0 };

  constructor(config: LayerConfig) {
    super(config);
    this.canvas._canvas.style.visibility = 'hidden';
  }

  override drawHit(): this {
    return this;
  }

  /** What of it changed is drawn by whoever knows what that is; Konva would draw all of it when something was dragged. */
  override drawScene(): this {
    return this;
  }

  override _syncHitCanvasSize(): void {}

  override _setSize(size: Size): this {
    if (this.#rests) return this;
    this.#size = size;
    return super._setSize(size);
  }

  rest(): void {
    if (this.#rests) return;
    this.#rests = true;
    this.getContext().clear();
    this.canvas._canvas.style.visibility = 'hidden';
  }

  /** As large as the stage, and clear; false where it did not rest. */
  wake(stage: Size): boolean {
    if (!this.#rests) return false;
    this.#rests = false;
    if (this.#size.width !== stage.width || this.#size.height !== stage.height) this._setSize(stage);
    this.canvas._canvas.style.visibility = '';
    return true;
  }
}
