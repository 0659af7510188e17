/** What all that paint in the page share: the drawing, the view of it, the hand, and the clock. */
import type { Grid } from '@shared/grid/index.ts';
import { START_YARNS } from '@shared/project/index.ts';
import { Viewport, type LineColours } from '../../../src-renderer/canvas/index.ts';

export const VIEW = { width: 1200, height: 700 };
export const SIZE = { width: 200, height: 1000 };
export const COLOURS = START_YARNS.map(({ colour }) => colour);
export const LINES: LineColours = { plain: '#d8d3c7', fifth: '#a9a395', tenth: '#8b8676', edge: '#5c6472' };
/** Cells in the proportion of 28 × 40, ten pixels high, somewhere in the middle of the chart. */
export const VIEWPORT = new Viewport((10 * 40) / 28, 10, -400, 5400);
/** Strokes are this long; a stroke is one step of undo. */
export const STROKE = 40;
/** Frames before the clock counts, for the compiler to have seen them. */
export const WARM_UP = 100;

export function drawing(): Grid {
  const cells = Uint8Array.from({ length: SIZE.width * SIZE.height }, (_, at) =>
    ((at % 7) * (at % 11)) % 3 === 1 ? 1 : 0,
  );
  return { ...SIZE, cells };
}

/** Where the pointer is at a frame: it wanders over the view, a cell or two further each time. */
export function pointerAt(frame: number): { x: number; y: number } {
  return { x: 600 + 580 * Math.sin(frame * 0.021), y: 350 + 330 * Math.sin(frame * 0.017 + 1) };
}

export interface Painter {
  /** What a pointer event does to the grid. */
  edit(x: number, y: number): void;
  /** Draws it, down to the pixels. */
  draw(x: number, y: number): void;
  destroy(): void;
}

export function hostElement(): HTMLDivElement {
  const element = document.createElement('div');
  Object.assign(element.style, { width: `${VIEW.width}px`, height: `${VIEW.height}px` });
  document.body.replaceChildren(element);
  return element;
}

export function readPixel(context: CanvasRenderingContext2D, x: number, y: number): number {
  return context.getImageData(x, y, 1, 1).data[0] as number;
}

/** Times of frames, ms. */
export interface FrameTimes {
  readonly draw: number[];
  readonly whole: number[];
}

export function paintFrame(painter: Painter, frame: number, times: FrameTimes | null): void {
  const { x, y } = pointerAt(frame);
  const start = performance.now();
  painter.edit(x, y);
  const edited = performance.now();
  painter.draw(x, y);
  const end = performance.now();
  times?.draw.push(end - edited);
  times?.whole.push(end - start);
}

export function noTimes(): FrameTimes {
  return { draw: [], whole: [] };
}
