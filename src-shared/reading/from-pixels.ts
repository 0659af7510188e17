/** A picture that was decoded to one opaque colour a pixel, as photos are held. */
import type { Pixels } from '../picture/index.ts';
import { blankPicture, type Picture } from './picture.ts';

export function pictureOfPixels({ width, height, colours }: Pixels): Picture {
  const picture = blankPicture(width, height);
  const { rgba } = picture;
  colours.forEach((colour, pixel) => {
    rgba[pixel * 4] = colour >> 16;
    rgba[pixel * 4 + 1] = (colour >> 8) & 255;
    rgba[pixel * 4 + 2] = colour & 255;
    rgba[pixel * 4 + 3] = 255;
  });
  return picture;
}
