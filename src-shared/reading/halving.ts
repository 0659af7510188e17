/**
 * Keeping the rows that a decoder hands on. Of a picture with very many pixels
 * each 2 × 2 become one, their mean, while they come: no chart needs more, and
 * what is never held cannot fill the memory.
 */
import { blankPicture, type Picture } from './picture.ts';
import type { TakeRow } from '../picture/index.ts';

export interface Keeper {
  readonly take: TakeRow;
  /** What was kept, once all rows have come. */
  readonly picture: Picture;
}

/** All pixels as they are. */
export function keepAll(width: number, height: number): Keeper {
  const picture = blankPicture(width, height);
  const { rgba: kept } = picture;
  return {
    picture,
    take(y, rgba, first, step, count) {
      const start = (y * width + first) * 4;
      if (step === 1) {
        kept.set(rgba.subarray(0, 4 * count), start);
        return;
      }
      for (let pixel = 0; pixel < count; pixel++) {
        kept.set(rgba.subarray(4 * pixel, 4 * pixel + 4), start + 4 * step * pixel);
      }
    },
  };
}

/** The mean of each 2 × 2; an odd last column or row is met alone. Rows must come whole, from the top. */
export function keepHalf(width: number, height: number): Keeper {
  const half = Math.ceil(width / 2);
  const picture = blankPicture(half, Math.ceil(height / 2));
  const { rgba: kept } = picture;
  const above = new Uint8Array(width * 4);
  const mean = (y: number, upper: Uint8Array, lower: Uint8Array): void => {
    let to = (y >> 1) * half * 4;
    for (let column = 0; column < half; column++) {
      const left = 8 * column;
      const right = 2 * column + 1 < width ? left + 4 : left;
      for (let part = 0; part < 3; part++) {
        const sum =
          (upper[left + part] as number) +
          (upper[right + part] as number) +
          (lower[left + part] as number) +
          (lower[right + part] as number);
        kept[to + part] = (sum + 2) >> 2;
      }
      kept[to + 3] = 255;
      to += 4;
    }
  };
  return {
    picture,
    take(y, rgba) {
      if ((y & 1) === 1) mean(y, above, rgba);
      else if (y === height - 1) mean(y, rgba, rgba);
      else above.set(rgba);
    },
  };
}
