/** A grey for grid lines that shows on every yarn of a motif. */
import { relativeLuminance } from '@shared/colour/index.ts';

/** Least contrast of the lines against the lightest and the darkest yarn for the grey between them to do. */
const LEAST = 1.7;
/** Contrast of the lines against yarns so alike that no grey between them shows. */
const APART = 2.4;

/**
 * The grey that stands as far from the darkest of `colours` (`#rrggbb`) as from
 * the lightest, by WCAG's contrast. Where they are too alike, one that stands
 * clear of all of them.
 */
export function lineGrey(colours: readonly string[]): string {
  const lights = colours.map((colour) => relativeLuminance(colour) + 0.05);
  const dark = Math.min(...lights);
  const light = Math.max(...lights);
  const between = Math.sqrt(dark * light);
  if (between / dark >= LEAST) return grey(between);
  return grey(light * APART <= 1.05 ? light * APART : dark / APART);
}

/** The grey of a luminance, given with WCAG's 0.05 added. */
function grey(light: number): string {
  const luminance = Math.min(Math.max(light - 0.05, 0), 1);
  const channel = luminance <= 0.0031308 ? 12.92 * luminance : 1.055 * luminance ** (1 / 2.4) - 0.055;
  const hex = Math.round(channel * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${hex}${hex}${hex}`;
}
