/** A decoded photo, scan or drawing, before anything is known about what it shows. */
import { problemError } from '../problem/index.ts';

/**
 * Four bytes a pixel (red, green, blue, alpha; sRGB), row-major, the topmost
 * row first. Positions are measured in pixels from the outer corner of the
 * first pixel: its centre lies at (0.5, 0.5).
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array | Uint8ClampedArray;
}

/** The most pixels a photo may have, in millions. */
export const MOST_MEGAPIXELS = 60;

/**
 * Of a photo with more, each 2 × 2 pixels become one while it is decoded: 16
 * million are 16 for each cell of the largest chart that can be read, and 64 MB.
 */
export const MOST_KEPT_MEGAPIXELS = 16;

/** Called with the size a file declares, before it is decoded. Throws `photo-too-large`. */
export function assertPhotoSize(width: number, height: number): void {
  if (width * height > MOST_MEGAPIXELS * 1e6) {
    throw problemError('photo-too-large', { width, height, mostMegapixels: MOST_MEGAPIXELS });
  }
}

/** A picture of that size, black and see-through. */
export function blankPicture(width: number, height: number): Picture {
  return { width, height, rgba: new Uint8ClampedArray(width * height * 4) };
}

/** The picture laid on white paper: no pixel is see-through. The same picture if none was. */
export function onPaper(picture: Picture): Picture {
  const { width, height, rgba } = picture;
  if (isOpaque(rgba)) return picture;
  const laid = new Uint8ClampedArray(rgba.length);
  for (let i = 0; i < rgba.length; i += 4) {
    const alpha = (rgba[i + 3] as number) / 255;
    for (let channel = 0; channel < 3; channel++) {
      laid[i + channel] = (rgba[i + channel] as number) * alpha + 255 * (1 - alpha);
    }
    laid[i + 3] = 255;
  }
  return { width, height, rgba: laid };
}

function isOpaque(rgba: Uint8Array | Uint8ClampedArray): boolean {
  for (let i = 3; i < rgba.length; i += 4) if (rgba[i] !== 255) return false;
  return true;
}
