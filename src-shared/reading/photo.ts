/**
 * A photo ready to be looked at again and again while a corner moves.
 *
 * Straightening that shrinks must average the pixels that fall together, or
 * thin lines come and go. So the photo is kept at full size, half, a quarter
 * and so on, each level the mean of 2 × 2 pixels of the one above, made once
 * and at most a third more memory together. Straightening then reads single
 * pixels of the level that fits.
 */
import { onPaper, type Picture } from './picture.ts';

export interface Photo {
  /** Full size first, each next one half as wide and tall (rounded up). */
  readonly levels: readonly Picture[];
}

/** Levels below this size are not made. */
const LEAST_SIDE = 64;

/** The photo with its smaller levels; what is see-through is laid on white. */
export function photoOf(picture: Picture): Photo {
  const levels = [onPaper(picture)];
  for (;;) {
    const last = levels.at(-1) as Picture;
    if (Math.min(last.width, last.height) < 2 * LEAST_SIDE) return { levels };
    levels.push(halved(last));
  }
}

/** Each pixel the mean of 2 × 2; an odd last column or row is met alone. */
export function halved({ width, height, rgba }: Picture): Picture {
  const halfWidth = Math.ceil(width / 2);
  const halfHeight = Math.ceil(height / 2);
  const half = new Uint8ClampedArray(halfWidth * halfHeight * 4);
  let to = 0;
  for (let y = 0; y < halfHeight; y++) {
    const upper = 2 * y * width * 4;
    const lower = Math.min(2 * y + 1, height - 1) * width * 4;
    for (let x = 0; x < halfWidth; x++) {
      const left = 8 * x;
      const right = 2 * x + 1 < width ? left + 4 : left;
      for (let channel = 0; channel < 3; channel++) {
        const sum =
          (rgba[upper + left + channel] as number) +
          (rgba[upper + right + channel] as number) +
          (rgba[lower + left + channel] as number) +
          (rgba[lower + right + channel] as number);
        half[to + channel] = (sum + 2) >> 2;
      }
      half[to + 3] = 255;
      to += 4;
    }
  }
  return { width: halfWidth, height: halfHeight, rgba: half };
}

/** The largest whole number of halvings that leaves at least one pixel for each that is wanted. */
export function levelFor(photo: Photo, pixelsPerWanted: number): number {
  const level = Math.floor(Math.log2(Math.max(1, pixelsPerWanted)) + 0.25);
  return Math.min(level, photo.levels.length - 1);
}
