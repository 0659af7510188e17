import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CORNERS,
  movedCrop,
  stretchedCrop,
  wholeOf,
  type Size,
} from '../../../src-renderer/reading-in/from-picture/crop.ts';
import type { Crop } from '@shared/reading/index.ts';

const picture = { width: 90, height: 60 };
const part: Crop = { left: 10, top: 20, width: 30, height: 20 };

function isInside({ left, top, width, height }: Crop, within: Size): boolean {
  const numbers = [left, top, width, height].every(Number.isInteger);
  return (
    numbers &&
    left >= 0 &&
    top >= 0 &&
    width >= 1 &&
    height >= 1 &&
    left + width <= within.width &&
    top + height <= within.height
  );
}

describe('the part of a picture that is used', () => {
  it('is all of it at first', () => {
    expect(wholeOf(picture)).toEqual({ left: 0, top: 0, width: 90, height: 60 });
  });

  it('moves as far as the picture goes and keeps its size', () => {
    expect(movedCrop(part, 5.4, -3, picture)).toEqual({ ...part, left: 15, top: 17 });
    expect(movedCrop(part, 500, -500, picture)).toEqual({ ...part, left: 60, top: 0 });
  });

  it('is stretched by one corner while the opposite one stays', () => {
    expect(stretchedCrop(part, { x: 'left', y: 'top' }, 4, 5, picture)).toEqual({
      left: 4,
      top: 5,
      width: 36,
      height: 35,
    });
    expect(stretchedCrop(part, { x: 'right', y: 'bottom' }, 200, 0, picture)).toEqual({
      ...part,
      width: 80,
      height: 1,
    });
  });

  it('never leaves the picture nor vanishes, wherever the pointer goes', () => {
    const far = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...CORNERS), far, far, (corner, x, y) => {
        expect(isInside(stretchedCrop(part, corner, x, y, picture), picture)).toBe(true);
        expect(isInside(movedCrop(part, x, y, picture), picture)).toBe(true);
      }),
    );
  });
});
