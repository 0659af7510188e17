/**
 * Drawing an SVG in the window, strip by strip.
 *
 * Only a document can draw one, so no worker can be ended that does. But what
 * lies outside a strip costs next to nothing: between strips the window lives,
 * and the drawing is given up when its time is over.
 */
import { problemError } from '@shared/problem/index.ts';
import type { Picture, SvgDrawing } from '@shared/reading/index.ts';
import { SECONDS } from './limited.ts';

/** Rows of the first strip; a quick one is followed by one of twice as many, a slow one by half. */
const FIRST_ROWS = 16;
const QUICK_MS = 50;
const SLOW_MS = 200;

/** Throws `picture-broken` for what the browser cannot draw, or `work-stopped`. */
export async function drawnSvg({ text, width, height }: SvgDrawing, seconds: number = SECONDS): Promise<Picture> {
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  const began = performance.now();
  const assertTime = (): void => {
    if (performance.now() - began < seconds * 1000) return;
    throw problemError('work-stopped', { work: 'picture', limit: 'time', amount: seconds });
  };
  try {
    const image = new Image(width, height);
    image.src = address;
    await image.decode().catch(() => {
      throw problemError('picture-broken', { kind: 'SVG', damage: 'drawing' });
    });
    const rgba = new Uint8ClampedArray(width * height * 4);
    let rows = FIRST_ROWS;
    for (let top = 0; top < height;) {
      assertTime();
      const strip = Math.min(rows, height - top);
      const start = performance.now();
      rgba.set(stripOf(image, width, height, top, strip), top * width * 4);
      const took = performance.now() - start;
      top += strip;
      if (took < QUICK_MS) rows *= 2;
      else if (took > SLOW_MS) rows = Math.max(1, rows >> 1);
      await new Promise((resolve) => setTimeout(resolve));
    }
    return { width, height, rgba };
  } finally {
    URL.revokeObjectURL(address);
  }
}

function stripOf(image: HTMLImageElement, width: number, height: number, top: number, rows: number): Uint8ClampedArray {
  const context = new OffscreenCanvas(width, rows).getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  context.drawImage(image, 0, -top, width, height);
  return context.getImageData(0, 0, width, rows).data;
}
