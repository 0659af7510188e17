/**
 * What is dragged on a chart: Konva nodes, which Konva finds under the pointer
 * and drags. All else is too many for nodes (2,000 of them take 45 ms a frame)
 * and shares one shape a layer.
 */
import { Konva } from 'konva/lib/Global.js';
import type { Group } from 'konva/lib/Group.js';
import { Shape } from 'konva/lib/Shape.js';
import type { Stage } from 'konva/lib/Stage.js';
import { SLACK, type Held, type Point } from './gestures.ts';

// The middle button pans.
Konva.dragButtons = [0];

export interface ChartNode {
  /** Names it as long as it is there, on whichever layer it is drawn. */
  readonly key: string;
  /** Where it is taken hold of: corners of a polygon, in CSS pixels. */
  readonly corners: readonly Point[];
  draw(context: CanvasRenderingContext2D): void;
}

/** The nodes that a layer has, from the lowest up, and the group that takes them there. */
export interface NodesOfLayer {
  readonly group: Group;
  readonly nodes: readonly ChartNode[];
}

/** What is pressed, and whoever is told of the drag. */
interface HeldNode {
  readonly key: string;
  readonly by: Held;
}

export class ChartNodes {
  readonly #stage: Stage;
  readonly #shapes = new Map<string, Shape>();
  readonly #nodes = new Map<string, ChartNode>();
  #held: HeldNode | null = null;

  constructor(stage: Stage) {
    this.#stage = stage;
  }

  /** Puts all nodes where they are now; one that is dragged may go from layer to layer. */
  place(layers: readonly NodesOfLayer[]): void {
    const all = new Set(layers.flatMap(({ nodes }) => nodes.map(({ key }) => key)));
    for (const key of this.#shapes.keys()) if (!all.has(key)) this.#takeAway(key);
    for (const { group, nodes } of layers) {
      for (const node of nodes) {
        this.#nodes.set(node.key, node);
        this.#shapeOf(node.key).moveTo(group);
      }
      nodes.forEach(({ key }, index) => {
        const shape = this.#shapeOf(key);
        if (shape.zIndex() !== index) shape.zIndex(index);
      });
    }
  }

  /** The node under a pixel of the view, or null. */
  keyAt(at: Point): string | null {
    return this.#stage.getIntersection(at)?.name() ?? null;
  }

  /** Lets Konva drag a node that is pressed, and `by` know of it; a press that Konva does not begin to drag ends with the pointer. */
  hold(key: string, by: Held): Held {
    const held: HeldNode = { key, by };
    const shape = this.#shapeOf(key);
    this.#held = held;
    return {
      move: () => undefined,
      end: () => {
        if (!shape.isDragging()) this.#end(held);
      },
      giveUp: () => {
        if (this.#held !== held) return;
        this.#held = null;
        shape.stopDrag();
        by.giveUp();
      },
    };
  }

  #end(held: HeldNode): void {
    this.#held = null;
    held.by.end();
  }

  #takeAway(key: string): void {
    const shape = this.#shapeOf(key);
    const held = this.#held;
    if (held?.key === key) {
      this.#held = null;
      held.by.giveUp();
    }
    shape.destroy();
    this.#shapes.delete(key);
    this.#nodes.delete(key);
  }

  #shapeOf(key: string): Shape {
    let shape = this.#shapes.get(key);
    if (!shape) this.#shapes.set(key, (shape = this.#made(key)));
    return shape;
  }

  #made(name: string): Shape {
    const shape: Shape = new Shape({
      name,
      draggable: true,
      dragDistance: SLACK + 1,
      perfectDrawEnabled: false,
      // It goes by stitches and rows: what is shown next puts it in its place.
      dragBoundFunc: () => ({ x: 0, y: 0 }),
      sceneFunc: () => {
        const context = shape.getLayer()?.getNativeCanvasElement().getContext('2d');
        if (!context) return;
        context.save();
        this.#nodes.get(name)?.draw(context);
        context.restore();
      },
      hitFunc: (context) => {
        context.beginPath();
        this.#nodes.get(name)?.corners.forEach(({ x, y }, index) => {
          if (index === 0) context.moveTo(x, y);
          else context.lineTo(x, y);
        });
        context.closePath();
        context.fillShape(shape);
      },
    });
    shape.on('dragstart', () => {
      // A palm, or a finger that came to another one, drags nothing.
      if (this.#held?.key !== name) shape.stopDrag();
    });
    shape.on('dragmove', () => {
      const at = this.#stage.getPointerPosition();
      if (at && this.#held?.key === name) this.#held.by.move([at]);
    });
    shape.on('dragend', () => {
      if (this.#held?.key === name) this.#end(this.#held);
    });
    return shape;
  }
}
