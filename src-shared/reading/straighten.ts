/** A chart in a photo, brought to a rectangle. */
import { assertCorners, rectangle, sideLengths, type Corners } from './corners.ts';
import { homography, type Homography } from './homography.ts';
import { levelFor, type Photo } from './photo.ts';
import { blankPicture, type Picture } from './picture.ts';
import type { Steps } from './steps.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * A cell is straightened to this many pixels across and up: enough to tell its
 * middle from its lines, and no more than that.
 */
const LEAST_CELL = 16;
const MOST_CELL = 24;

/** Very many cells get fewer pixels each, but never fewer than this. */
const LEAST_CROWDED_CELL = 4;

/** Straightened pictures stay within this many pixels: a tenth of a second and 32 MB. */
const MOST_PIXELS = 8e6;

/** Rows straightened in one step. */
const ROWS_A_STEP = 64;

/** The size at which as much can be seen as in the photo, within `mostPixels`. */
export function naturalSize(corners: Corners, mostPixels: number): Size {
  const { across, up } = sideLengths(corners);
  const shrink = Math.min(1, Math.sqrt(mostPixels / (across * up)));
  return { width: Math.max(8, Math.round(across * shrink)), height: Math.max(8, Math.round(up * shrink)) };
}

/** The size that gives each of `columns` × `rows` cells a whole number of pixels, as many as the photo has for it. */
export function sizeForCells(corners: Corners, columns: number, rows: number): Size {
  const { across, up } = sideLengths(corners);
  const within = (pixels: number): number => Math.max(LEAST_CELL, Math.min(MOST_CELL, Math.round(pixels)));
  const width = within(across / columns);
  const height = within(up / rows);
  const crowding = Math.min(1, Math.sqrt(MOST_PIXELS / (columns * width * rows * height)));
  const crowded = (pixels: number): number => Math.max(LEAST_CROWDED_CELL, Math.floor(pixels * crowding));
  return { width: columns * crowded(width), height: rows * crowded(height) };
}

/** Places of a level of a photo that a straightened picture is made of. */
export interface Into {
  readonly source: Picture;
  /** From pixels of the straightened picture to those of `source`. */
  readonly homography: Homography;
}

/** The level that shows what a picture of `size` can, and the way there. Throws as `assertCorners` does. */
export function intoPhoto(photo: Photo, corners: Corners, size: Size): Into {
  const full = photo.levels[0] as Picture;
  assertCorners(corners, full.width, full.height);
  const { across, up } = sideLengths(corners);
  const shrinking = Math.sqrt((across / size.width) * (up / size.height));
  const level = levelFor(photo, shrinking);
  const scaled = corners.map(({ x, y }) => ({ x: x / 2 ** level, y: y / 2 ** level })) as unknown as Corners;
  return {
    source: photo.levels[level] as Picture,
    homography: homography(rectangle(size.width, size.height), scaled),
  };
}

/**
 * The part of `photo` inside `corners` as a rectangle of `size`: each pixel
 * looks up where its centre lies in the photo and mixes the four pixels around
 * that place (bilinear). Throws as `assertCorners` does.
 */
export function* straighten(photo: Photo, corners: Corners, size: Size): Steps<Picture> {
  const into = intoPhoto(photo, corners, size);
  const straight = blankPicture(size.width, size.height);
  for (let row = 0; row < size.height; row += ROWS_A_STEP) {
    warpRows(into, straight, row, Math.min(size.height, row + ROWS_A_STEP));
    yield { stage: 'straighten', done: Math.min(1, (row + ROWS_A_STEP) / size.height) };
  }
  return straight;
}

/** Fills the rows `from` … `to - 1` of `target`. */
function warpRows({ source, homography: h }: Into, target: Picture, from: number, to: number): void {
  for (let row = from; row < to; row++) {
    // Along a row the three sums of the homography grow by a constant.
    let x = h[0] * 0.5 + h[1] * (row + 0.5) + h[2];
    let y = h[3] * 0.5 + h[4] * (row + 0.5) + h[5];
    let w = h[6] * 0.5 + h[7] * (row + 0.5) + h[8];
    let at = row * target.width * 4;
    for (let column = 0; column < target.width; column++) {
      mix(source, x / w, y / w, target.rgba, at);
      at += 4;
      x += h[0];
      y += h[3];
      w += h[6];
    }
  }
}

/**
 * Writes the colour of `source` at a place between its pixels. A place beyond
 * its edge takes the nearest pixel of the edge.
 */
export function mix({ width, height, rgba }: Picture, x: number, y: number, out: Picture['rgba'], at: number): void {
  const lastX = width - 1;
  const lastY = height - 1;
  // Pixel centres lie at halves, so the pixel to the left of a place is half a pixel before it.
  let u = x - 0.5;
  let v = y - 0.5;
  if (u < 0) u = 0;
  else if (u > lastX) u = lastX;
  if (v < 0) v = 0;
  else if (v > lastY) v = lastY;
  const left = u | 0;
  const top = v | 0;
  const right = u - left;
  const down = v - top;
  const a = (top * width + left) * 4;
  const b = left < lastX ? a + 4 : a;
  const below = top < lastY ? width * 4 : 0;
  const wa = (1 - right) * (1 - down);
  const wb = right * (1 - down);
  const wc = (1 - right) * down;
  const wd = right * down;
  for (let channel = 0; channel < 3; channel++) {
    out[at + channel] =
      (rgba[a + channel] as number) * wa +
      (rgba[b + channel] as number) * wb +
      (rgba[a + below + channel] as number) * wc +
      (rgba[b + below + channel] as number) * wd;
  }
  out[at + 3] = 255;
}
