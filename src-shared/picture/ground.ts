/**
 * Which colour of a picture is the ground, when nobody has said so.
 *
 * 1. A picture of nothing but black and white reads like a PBM: white.
 * 2. If exactly one colour fills an outermost column from bottom to top, that
 *    one: knitters leave a blank column between copies.
 * 3. Otherwise the commonest colour; of equally common ones the lightest.
 */
import { BLACK, WHITE, type Pixels } from './pixels.ts';

/** True for a picture of nothing but pure black, pure white, or both. */
export function isBlackAndWhite(pixels: Pixels): boolean {
  return pixels.colours.every((colour) => colour === BLACK || colour === WHITE);
}

/** The ground of a picture as 0xrrggbb. */
export function groundOf(pixels: Pixels): number {
  if (isBlackAndWhite(pixels)) return WHITE;
  const edges = new Set([0, pixels.width - 1].map((column) => colourFilling(pixels, column)));
  edges.delete(null);
  const [edge] = edges;
  return edges.size === 1 ? (edge as number) : commonest(pixels);
}

/** The one colour of a whole column, or null. */
function colourFilling({ width, height, colours }: Pixels, column: number): number | null {
  const colour = colours[column] as number;
  for (let row = 1; row < height; row++) if (colours[row * width + column] !== colour) return null;
  return colour;
}

function commonest({ colours }: Pixels): number {
  const counts = new Map<number, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  return [...counts].reduce((best, next) =>
    next[1] > best[1] || (next[1] === best[1] && lightness(next[0]) > lightness(best[0])) ? next : best,
  )[0];
}

/** Relative luminance times 10,000, with the weights of WCAG 2.2 on the stored values; enough to order colours. */
function lightness(colour: number): number {
  return 2126 * (colour >> 16) + 7152 * ((colour >> 8) & 255) + 722 * (colour & 255);
}
