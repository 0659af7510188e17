/**
 * Konva's stage and layer without what costs here and gives nothing: pictures
 * out of sight to find shapes in, painted with each drawing and read back three
 * times for each move of the pointer; and drawing twice when the size changes.
 */
import { Layer } from 'konva/lib/Layer.js';
import type { Shape } from 'konva/lib/Shape.js';
import { Stage } from 'konva/lib/Stage.js';
import type { Point } from './gestures.ts';

/** In CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Finds shapes as it is told to, and is deaf to a pointer that only passes: no shape listens to that. */
export class FindingStage extends Stage {
  shapeAt: (at: Point) => Shape | null = () => null;

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
    if (!('buttons' in event) || event.buttons > 0) super._pointermove(event);
  }
}

/** Has no picture to find shapes in, nor room for one: that takes as long to be had as a layer's own. */
export class FoundLayer extends Layer {
  override drawHit(): this {
    return this;
  }

  override _syncHitCanvasSize(): void {}
}
