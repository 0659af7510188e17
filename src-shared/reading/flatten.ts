/**
 * A chart on bent paper, laid flat.
 *
 * Where paper bulges between two corners its outermost cells lie beyond the
 * straight line from the one to the other, and a picture that ends there does
 * not show them. So it is made once more, each pixel taken from where the bend
 * puts it.
 */
import { project } from './homography.ts';
import type { Corners } from './corners.ts';
import type { Drift } from './drift.ts';
import type { Photo } from './photo.ts';
import { blankPicture, type Picture } from './picture.ts';
import type { Steps } from './steps.ts';
import { intoPhoto, mix, type Size } from './straighten.ts';

/** Cells whose middle lies further out than this, in cells, are seen in part or not at all. */
const MOST_OUT = 0.08;

/** Places along each side that are asked. */
const PLACES = 40;

/** Whether outermost cells lie beyond the sides of the straightened picture. */
export function bulges({ across, up }: Pick<Drift, 'across' | 'up'>): boolean {
  return Array.from({ length: PLACES + 1 }, (_, i) => i / PLACES).some(
    (at) => -across(0, at) > MOST_OUT || across(1, at) > MOST_OUT || -up(at, 0) > MOST_OUT || up(at, 1) > MOST_OUT,
  );
}

/** Pixels between the places for which the bend is asked; in between it is as good as straight. */
const SPACING = 8;

/**
 * What lies inside `corners` of `photo` as a rectangle of `size`, its `columns` ×
 * `rows` cells moved to where even spacing puts them. Throws as `assertCorners` does.
 */
export function* flatten(
  photo: Photo,
  corners: Corners,
  size: Size,
  columns: number,
  rows: number,
  drift: Drift,
): Steps<Picture> {
  const { source, homography } = intoPhoto(photo, corners, size);
  const { width, height } = size;
  const flat = blankPicture(width, height);
  const many = Math.ceil(width / SPACING) + 1;
  /** Where the places along a row lie in the source: two numbers each. */
  const placesAlong = (y: number): Float64Array => {
    const places = new Float64Array(many * 2);
    for (let i = 0; i < many; i++) {
      const x = i * SPACING;
      const [u, v] = [x / width, y / height];
      const across = x + (drift.across(u, v) * width) / columns;
      const at = project(homography, { x: across, y: y + (drift.up(u, v) * height) / rows });
      places[i * 2] = at.x;
      places[i * 2 + 1] = at.y;
    }
    return places;
  };
  let above = placesAlong(0);
  for (let top = 0; top < height; top += SPACING) {
    const below = placesAlong(top + SPACING);
    for (let row = top; row < Math.min(height, top + SPACING); row++) {
      const down = (row + 0.5 - top) / SPACING;
      for (let column = 0; column < width; column++) {
        const i = Math.floor(column / SPACING) * 2;
        const right = (column + 0.5) / SPACING - i / 2;
        const between = (axis: number): number =>
          ((above[i + axis] as number) * (1 - right) + (above[i + 2 + axis] as number) * right) * (1 - down) +
          ((below[i + axis] as number) * (1 - right) + (below[i + 2 + axis] as number) * right) * down;
        mix(source, between(0), between(1), flat.rgba, (row * width + column) * 4);
      }
    }
    above = below;
    yield { stage: 'straighten', done: Math.min(1, (top + SPACING) / height) };
  }
  return flat;
}
