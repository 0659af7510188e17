/**
 * Cells that are filled otherwise than the others of their yarn.
 *
 * Pencil strokes, hatching and crosses leave a cell uneven, and paper is even,
 * whatever light falls on either. So where filled cells are clearly drawn by
 * strokes, one that is dark and yet even lies in the shade, and one that is
 * light and yet uneven may have strokes that light hides. Ink that fills a cell
 * is as even as paper, and tells nothing in this way.
 */
import { luma } from './luma.ts';

/**
 * The middle half of the one yarn's cells is so many times less even than that
 * of the other's: of pencil strokes on paper it is 2.7 to 6 times, of felt pen
 * and of ink less than 1.8.
 */
const CLEARLY = 2.2;

/** As even as this no picture is, as a share of how light it is: what is more even counts as much. */
const LEAST_STROKES = 0.004;

/** A part of a straightened chart, in pixels; `right` and `bottom` are just beyond it. */
interface Part {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * How uneven a part of a picture `width` pixels wide is: by how much its pixels
 * stray (root of the mean square) from the plane that is laid through their
 * lightness, which takes the fall of light off, as a share of how light it is.
 */
export function unevennessOf(rgba: ArrayLike<number>, width: number, { left, right, top, bottom }: Part): number {
  const [midX, midY] = [(left + right - 1) / 2, (top + bottom - 1) / 2];
  let [sum, squares, alongX, alongY, spreadX, spreadY] = [0, 0, 0, 0, 0, 0];
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      const value = luma(rgba, (y * width + x) * 4);
      sum += value;
      squares += value * value;
      alongX += (x - midX) * value;
      alongY += (y - midY) * value;
      spreadX += (x - midX) ** 2;
      spreadY += (y - midY) ** 2;
    }
  }
  const count = (right - left) * (bottom - top);
  const plane = (spreadX === 0 ? 0 : alongX ** 2 / spreadX) + (spreadY === 0 ? 0 : alongY ** 2 / spreadY);
  const mean = sum / count;
  const strayed = Math.max(0, squares - count * mean * mean - plane);
  return Math.sqrt(strayed / count) / Math.max(1, mean);
}

/**
 * 1 for each cell that is filled as those of the other yarn are; null where
 * the two are not clearly filled in different ways. `yarns` are 0 and 1.
 */
export function filledOtherwise(yarns: Uint8Array, unevenness: ArrayLike<number>): Uint8Array | null {
  const [paper, figure] = [0, 1].map((yarn) =>
    Array.from(yarns.keys())
      .filter((cell) => yarns[cell] === yarn)
      .map((cell) => Math.max(LEAST_STROKES, unevenness[cell] as number))
      .sort((one, other) => one - other),
  ) as [number[], number[]];
  if (paper.length === 0 || figure.length === 0) return null;
  if (shareOf(figure, 0.25) < CLEARLY * shareOf(paper, 0.75)) return null;
  const border = Math.sqrt(shareOf(figure, 0.5) * shareOf(paper, 0.5));
  return yarns.map((yarn, cell) => ((unevenness[cell] as number) > border === (yarn === 1) ? 0 : 1));
}

/** The value that such a share of them lies below. */
function shareOf(sorted: readonly number[], share: number): number {
  return sorted[Math.floor(share * (sorted.length - 1))] as number;
}
