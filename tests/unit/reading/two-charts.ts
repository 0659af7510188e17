/** Pictures for tests: two charts on one page. */
import { blankPicture, type Picture } from '@shared/reading/index.ts';
import { photograph } from './chart-photo.ts';
import { blobs } from './motifs.ts';

const look = {
  colours: [
    [240, 238, 230],
    [40, 40, 60],
  ] as const,
  line: 0.08,
  lineColour: [120, 120, 130] as const,
};

/** A chart of 14 × 16 cells at the left and one of 26 × 20 at the right. */
export function twoChartsOnAPage(): Picture {
  const camera = { height: 330, roll: 2, tilt: 4, pan: 2 };
  return beside(
    photograph(blobs(14, 16, 2, 5), look, { width: 300, ...camera }, { blur: 0.6 }).picture,
    photograph(blobs(26, 20, 2, 6), look, { width: 420, ...camera }, { blur: 0.6 }).picture,
  );
}

/** Two pictures of one height as one. */
export function beside(left: Picture, right: Picture): Picture {
  const page = blankPicture(left.width + right.width, left.height);
  for (const [picture, from] of [
    [left, 0],
    [right, left.width],
  ] as const) {
    for (let y = 0; y < page.height; y++) {
      const row = picture.rgba.subarray(y * picture.width * 4, (y + 1) * picture.width * 4);
      page.rgba.set(row, (y * page.width + from) * 4);
    }
  }
  return page;
}
