/** A picture brought down to what a screen shows of it. */
import type { Picture } from '@shared/reading/index.ts';

/** More pixels than this a side, no screen shows. */
const MOST_SHOWN = 2048;

/** A copy in which a chart is found at a glance has no longer side. */
const MOST_SMALL = 1100;

/** Pictures larger than the copy by this much have one. */
const WORTH_COPYING = 1.5;

/** What is shown of a picture, and a small copy of its pixels; null where it is small itself. */
export interface Reduced {
  readonly shown: ImageBitmap;
  readonly small: Picture | null;
}

/** To bring down many millions of pixels takes a tenth of a second, so it is done where no window waits. */
export function reduced(picture: Picture): Reduced {
  const canvas = smallCanvas(picture, MOST_SHOWN);
  const small = smallOf(canvas, picture);
  return { shown: canvas.transferToImageBitmap(), small };
}

/** The same of a picture as the browser holds it, which is quicker than to draw its pixels. */
export function reducedImage(image: ImageBitmap): Reduced {
  return {
    shown: drawn(image, Math.min(1, MOST_SHOWN / Math.max(image.width, image.height)), image).transferToImageBitmap(),
    small: smallOf(image, image),
  };
}

/** Null for what is small itself. */
function smallOf(shown: CanvasImageSource, whole: Size): Picture | null {
  const side = Math.max(whole.width, whole.height);
  if (side <= WORTH_COPYING * MOST_SMALL) return null;
  const canvas = drawn(shown, MOST_SMALL / side, whole);
  const { width, height } = canvas;
  return { width, height, rgba: contextOf(canvas).getImageData(0, 0, width, height).data };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** What shows all of a picture, on a canvas at this scale of the picture. */
function drawn(shown: CanvasImageSource, scale: number, whole: Size): OffscreenCanvas {
  const side = (length: number): number => Math.max(1, Math.round(length * scale));
  const canvas = new OffscreenCanvas(side(whole.width), side(whole.height));
  const context = contextOf(canvas);
  context.imageSmoothingQuality = 'high';
  context.drawImage(shown, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/** Rows of the picture that are on a canvas at once: one for all of it would hold all pixels a second time. */
const STRIP_ROWS = 256;

/** The picture on a canvas off the screen, its longer side at most `mostSide` pixels. */
export function smallCanvas(picture: Picture, mostSide: number): OffscreenCanvas {
  const { width, height } = picture;
  const scale = Math.min(1, mostSide / Math.max(width, height));
  const small = new OffscreenCanvas(Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale)));
  const context = contextOf(small);
  context.imageSmoothingQuality = 'high';
  const rowsEach = height / small.height;
  // One row of the small canvas may stand for more rows than a strip has by itself.
  const strip = new OffscreenCanvas(width, Math.min(height, Math.max(STRIP_ROWS, Math.ceil(rowsEach) + 2)));
  const onStrip = contextOf(strip);
  // A strip ends where a row of the small one does, so that no line shows between two.
  const most = Math.max(1, Math.floor((STRIP_ROWS - 2) / rowsEach));
  for (let top = 0; top < small.height; top += most) {
    const rows = Math.min(most, small.height - top);
    const first = Math.floor(top * rowsEach);
    const count = Math.min(height, Math.ceil((top + rows) * rowsEach)) - first;
    onStrip.putImageData(rowsOf(picture, first, count), 0, 0);
    context.drawImage(strip, 0, top * rowsEach - first, width, rows * rowsEach, 0, top, small.width, rows);
  }
  // Its pixels go at once, not when the canvas is found to be of no use.
  strip.width = strip.height = 0;
  return small;
}

/** Some rows of a picture, not copied. */
function rowsOf({ width, rgba }: Picture, first: number, count: number): ImageData {
  const from = rgba.byteOffset + first * width * 4;
  return new ImageData(new Uint8ClampedArray(rgba.buffer as ArrayBuffer, from, count * width * 4), width, count);
}

function contextOf(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  return context;
}
