/** How well two colours can be told apart by their lightness. */

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
