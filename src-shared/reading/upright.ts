/** A photo turned the way its camera was held. */
import { blankPicture, type Picture } from './picture.ts';
import type { Orientation } from '../picture/index.ts';

/** The picture as it should be seen, given how it is stored (see {@link Orientation}). */
export function upright(picture: Picture, orientation: Orientation): Picture {
  if (orientation === 1) return picture;
  const { width, height, rgba } = picture;
  const isTurned = orientation >= 5;
  const turned = isTurned ? blankPicture(height, width) : blankPicture(width, height);
  // Whole pixels at a time. Along a row of the upright picture the stored ones lie evenly apart.
  const stored = wholePixels(rgba);
  const seen = wholePixels(turned.rgba);
  const place = (x: number, y: number): number => {
    const [column, row] = storedAt(orientation, x, y, width, height);
    return row * width + column;
  };
  const step = turned.width > 1 ? place(1, 0) - place(0, 0) : 0;
  for (let y = 0; y < turned.height; y++) {
    let from = place(0, y);
    const end = (y + 1) * turned.width;
    for (let to = end - turned.width; to < end; to++, from += step) seen[to] = stored[from] as number;
  }
  return turned;
}

function wholePixels(rgba: Uint8Array | Uint8ClampedArray): Uint32Array {
  const aligned = rgba.byteOffset % 4 === 0 ? rgba : rgba.slice();
  return new Uint32Array(aligned.buffer, aligned.byteOffset, aligned.length >> 2);
}

/** Which stored pixel is seen at (x, y) of the upright picture. */
function storedAt(orientation: Orientation, x: number, y: number, width: number, height: number): [number, number] {
  const [right, bottom] = [width - 1, height - 1];
  switch (orientation) {
    case 1:
      return [x, y];
    case 2:
      return [right - x, y];
    case 3:
      return [right - x, bottom - y];
    case 4:
      return [x, bottom - y];
    case 5:
      return [y, x];
    case 6:
      return [y, bottom - x];
    case 7:
      return [right - y, bottom - x];
    case 8:
      return [right - y, x];
  }
}
