/** A picture brought down to what a screen shows of it. */
import type { Picture } from '@shared/reading/index.ts';

/** The picture on a canvas off the screen, its longer side at most `mostSide` pixels. */
export function smallCanvas({ width, height, rgba }: Picture, mostSide: number): OffscreenCanvas {
  const whole = new OffscreenCanvas(width, height);
  // A copy only where the pixels do not lie in a buffer that ImageData takes.
  const pixels = rgba instanceof Uint8ClampedArray ? rgba : Uint8ClampedArray.from(rgba);
  whole.getContext('2d')?.putImageData(new ImageData(pixels as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0);
  const scale = Math.min(1, mostSide / Math.max(width, height));
  if (scale === 1) return whole;
  const small = new OffscreenCanvas(Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale)));
  const context = small.getContext('2d');
  if (!context) throw new Error('No 2D canvas');
  context.imageSmoothingQuality = 'high';
  context.drawImage(whole, 0, 0, small.width, small.height);
  // Its pixels go at once, not when the canvas is found to be of no use.
  whole.width = whole.height = 0;
  return small;
}
