/** Fitting a picture into a pane. */
import { devicePixelRatio } from 'svelte/reactivity/window';

export interface Fitted {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Screen pixels for one of the picture's. */
  readonly scale: number;
}

/** As large as it goes in the middle of the pane, `margin` clear on all sides. */
export function fitted(width: number, height: number, paneWidth: number, paneHeight: number, margin = 0): Fitted {
  const room = (side: number): number => Math.max(1, side - 2 * margin);
  const scale = Math.min(room(paneWidth) / width, room(paneHeight) / height);
  return {
    left: (paneWidth - width * scale) / 2,
    top: (paneHeight - height * scale) / 2,
    width: width * scale,
    height: height * scale,
    scale,
  };
}

/** Makes the canvas fill its box in device pixels; the context then draws in the box's own. What draws so draws again on a screen of another density. */
export function sharpContext(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
): CanvasRenderingContext2D | null {
  const ratio = devicePixelRatio.current ?? 1;
  canvas.width = Math.max(1, Math.round(width * ratio));
  canvas.height = Math.max(1, Math.round(height * ratio));
  const context = canvas.getContext('2d');
  context?.scale(ratio, ratio);
  return context;
}
