/**
 * What is dragged on a chart: Konva nodes, which Konva drags. All else is too
 * many for nodes (2,000 of them take 45 ms a frame) and shares one shape a layer.
 * Which one is under the pointer is told by their corners.
 */
import { Konva } from 'konva/lib/Global.js';
import type { Group } from 'konva/lib/Group.js';
import { Shape } from 'konva/lib/Shape.js';
import { SLACK, type Held, type Point } from './gestures.ts';
import type { FindingStage } from './konva-stage.ts';

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
  readonly nodeGroup: Group;
  readonly nodes: readonly ChartNode[];
}

/** What is pressed, and whoever is told of the drag. */
interface HeldNode {
  readonly key: string;
  readonly by: Held;
}

export class ChartNodes {
  readonly #stage: FindingStage;
  readonly #shapes = new Map<string, Shape>();
  readonly #nodes = new Map<string, ChartNode>();
  /** As they lie over each other, the lowest first. */
  #keys: readonly string[] = [];
  #held: HeldNode | null = null;

  constructor(stage: FindingStage) {
    this.#stage = stage;
    stage.isHolding = () => this.#held !== null;
    stage.shapeAt = (at) => {
      const key = this.keyAt(at);
      return key === null ? null : this.#shapeOf(key);
    };
  }

  /** Puts all nodes where they are now; one that is dragged may go from layer to layer. */
  place(layers: readonly NodesOfLayer[]): void {
    this.#keys = layers.flatMap(({ nodes }) => nodes.map(({ key }) => key));
    const all = new Set(this.#keys);
    for (const key of this.#shapes.keys()) if (!all.has(key)) this.#takeAway(key);
    for (const { nodeGroup, nodes } of layers) {
      for (const node of nodes) {
        this.#nodes.set(node.key, node);
        this.#shapeOf(node.key).moveTo(nodeGroup);
      }
      nodes.forEach(({ key }, index) => {
        const shape = this.#shapeOf(key);
        if (shape.zIndex() !== index) shape.zIndex(index);
      });
    }
  }

  /** The node under a pixel of the view, or null. */
  keyAt(at: Point): string | null {
    return this.#keys.findLast((key) => isWithin(at, this.#nodes.get(key)?.corners ?? [])) ?? null;
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
      sceneFunc: ({ _context: context }) => {
        context.save();
        this.#nodes.get(name)?.draw(context);
        context.restore();
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

/** Whether a line from the point to the right crosses the sides of a polygon an odd number of times. */
function isWithin({ x, y }: Point, corners: readonly Point[]): boolean {
  let within = false;
  for (const [index, to] of corners.entries()) {
    const from = corners.at(index - 1) as Point;
    if (from.y > y === to.y > y) continue;
    if (x < from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)) within = !within;
  }
  return within;
}
