/** Handles on a picture: what is dragged there, drawn so that it is seen on any picture. */
import type { ChartNode } from './chart-nodes.ts';
import type { Point } from './gestures.ts';
import { strokeCased, type MarkLook } from './stroke-cased.ts';

export interface HandleState {
  readonly isHeld: boolean;
  /** The next press says where it goes. */
  readonly isPicked: boolean;
  readonly hasKeyboard: boolean;
}

/** Pixels from its middle within which a handle is taken hold of: 44 across for a finger. */
const REACH = 22;
const RADIUS = 11;
const FOCUS_RADIUS = 19;

/** A ring, or a square, around a pixel of the view. */
export function handleNode(
  key: string,
  at: Point,
  shape: 'ring' | 'square',
  state: HandleState,
  look: MarkLook,
): ChartNode {
  return {
    key,
    corners: [
      { x: at.x - REACH, y: at.y - REACH },
      { x: at.x + REACH, y: at.y - REACH },
      { x: at.x + REACH, y: at.y + REACH },
      { x: at.x - REACH, y: at.y + REACH },
    ],
    draw(context) {
      outline(context, at, shape, RADIUS);
      if (!state.isHeld) {
        context.fillStyle = 'rgb(255 255 255 / 35%)';
        context.fill();
      }
      strokeCased(context, look, state.isPicked ? 6 : 3);
      if (state.isPicked) {
        // A double line: it waits to be put somewhere.
        context.lineWidth = 1.5;
        context.strokeStyle = look.casing;
        context.stroke();
      }
      if (state.hasKeyboard) {
        outline(context, at, shape, FOCUS_RADIUS);
        strokeCased(context, look, 2.5);
      }
    },
  };
}

const STEPS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What an arrow key moves by, in pixels of the picture: one, or with Shift ten. Null for any other key. */
export function arrowStep(event: KeyboardEvent): { readonly right: number; readonly down: number } | null {
  const step = event.ctrlKey || event.metaKey || event.altKey ? undefined : STEPS[event.key];
  if (!step) return null;
  const by = event.shiftKey ? 10 : 1;
  return { right: step[0] * by, down: step[1] * by };
}

function outline(context: CanvasRenderingContext2D, { x, y }: Point, shape: 'ring' | 'square', radius: number): void {
  context.beginPath();
  if (shape === 'ring') context.arc(x, y, radius, 0, 2 * Math.PI);
  else context.rect(x - radius, y - radius, 2 * radius, 2 * radius);
}
