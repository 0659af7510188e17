/** A photo turned the way its camera was held. */
import { blankPicture, type Picture } from './picture.ts';
import type { Orientation } from './picture-header.ts';

/** The picture as it should be seen, given how it is stored (see {@link Orientation}). */
export function upright(picture: Picture, orientation: Orientation): Picture {
  if (orientation === 1) return picture;
  const { width, height, rgba } = picture;
  const isTurned = orientation >= 5;
  const turned = isTurned ? blankPicture(height, width) : blankPicture(width, height);
  for (let y = 0; y < turned.height; y++) {
    for (let x = 0; x < turned.width; x++) {
      const [column, row] = storedAt(orientation, x, y, width, height);
      const from = (row * width + column) * 4;
      turned.rgba.set(rgba.subarray(from, from + 4), (y * turned.width + x) * 4);
    }
  }
  return turned;
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
