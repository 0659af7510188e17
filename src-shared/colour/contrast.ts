/** How well two colours can be told apart by their lightness, and colours made to stand out. */

/** Contrast ratio of two `#rrggbb` colours, 1 … 21: (L1 + 0.05) / (L2 + 0.05), the lighter first (WCAG 2.2). */
export function contrastRatio(one: string, other: string): number {
  const a = relativeLuminance(one);
  const b = relativeLuminance(other);
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Relative luminance of a `#rrggbb` colour in sRGB, 0 (black) … 1 (white) (WCAG 2.2). Throws `RangeError`. */
export function relativeLuminance(colour: string): number {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new RangeError(`"${colour}" is not #rrggbb`);
  const [red, green, blue] = [1, 3, 5].map((at) => linear(parseInt(colour.slice(at, at + 2), 16) / 255));
  return 0.2126 * (red as number) + 0.7152 * (green as number) + 0.0722 * (blue as number);
}

function linear(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
}

/** Least contrast of graphics that must be seen (WCAG 2.2, 1.4.11). */
export const GRAPHIC_CONTRAST = 3;

/** `colour` (`#rrggbb`), or as little of white or black mixed in as makes it stand out from `ground` by `ratio`. */
export function legibleOn(ground: string, colour: string, ratio: number): string {
  if (contrastRatio(ground, colour) >= ratio) return colour;
  const target = contrastRatio(ground, '#ffffff') >= contrastRatio(ground, '#000000') ? '#ffffff' : '#000000';
  for (let share = 0.1; share < 1; share += 0.1) {
    const mixed = mix(colour, target, share);
    if (contrastRatio(ground, mixed) >= ratio) return mixed;
  }
  return target;
}

/**
 * Two colours for a line within a wider one, that is seen on any ground at all:
 * they stand so far apart that no ground comes near both. The inner one keeps
 * to `colour` as far as that goes.
 */
export function twoTone(colour: string): { readonly inner: string; readonly outer: string } {
  const outer = contrastRatio(colour, '#ffffff') >= contrastRatio(colour, '#000000') ? '#ffffff' : '#000000';
  return { inner: legibleOn(outer, colour, GRAPHIC_CONTRAST ** 2), outer };
}

function mix(one: string, other: string, share: number): string {
  const channel = (colour: string, at: number): number => Number.parseInt(colour.slice(at, at + 2), 16);
  const mixed = [1, 3, 5].map((at) => Math.round(channel(one, at) * (1 - share) + channel(other, at) * share));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

/** Below this WCAG contrast a figure is hard to see against the main yarn. */
export const FAINT_CONTRAST = 1.5;
