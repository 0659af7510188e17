/**
 * Colours as eyes compare them.
 *
 * OKLab (Björn Ottosson, 2020): lightness 0 … 1 and two axes from green to
 * red and blue to yellow; the distance between two colours is about how
 * different they look. The conversion is written out here because it runs for
 * every cell; `culori`, which has it too, is what the tests compare with.
 */

/** Lightness, green–red, blue–yellow. */
export type Oklab = readonly [lightness: number, a: number, b: number];

/** Linear light of each sRGB value 0 … 255 (IEC 61966-2-1). */
export const LINEAR: Float64Array = Float64Array.from({ length: 256 }, (_, value) => toLinear(value / 255));

/** Linear light 0 … 1 of an sRGB value 0 … 1. */
export function toLinear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

/** Inverse of {@link toLinear}. */
export function fromLinear(light: number): number {
  return light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
}

/** OKLab of linear light, each channel 0 … 1. */
export function oklabOfLinear(red: number, green: number, blue: number): Oklab {
  const l = Math.cbrt(0.412221469470763 * red + 0.5363325372617348 * green + 0.0514459932675022 * blue);
  const m = Math.cbrt(0.2119034958178252 * red + 0.6806995506452344 * green + 0.1073969535369406 * blue);
  const s = Math.cbrt(0.0883024591900564 * red + 0.2817188391361215 * green + 0.6299787016738222 * blue);
  return [
    0.210454268309314 * l + 0.7936177747023054 * m - 0.0040720430116193 * s,
    1.9779985324311684 * l - 2.4285922420485799 * m + 0.450593709617411 * s,
    0.0259040424655478 * l + 0.7827717124575296 * m - 0.8086757549230774 * s,
  ];
}

/** OKLab of sRGB, each channel 0 … 255, fractions allowed. */
export function oklab(red: number, green: number, blue: number): Oklab {
  return oklabOfLinear(toLinear(red / 255), toLinear(green / 255), toLinear(blue / 255));
}

/** Linear light of OKLab; outside 0 … 1 where sRGB does not reach the colour. */
export function linearOfOklab([lightness, a, b]: Oklab): [red: number, green: number, blue: number] {
  const l = (lightness + 0.3963377773761749 * a + 0.2158037573099136 * b) ** 3;
  const m = (lightness - 0.1055613458156586 * a - 0.0638541728258133 * b) ** 3;
  const s = (lightness - 0.0894841775298119 * a - 1.2914855480194092 * b) ** 3;
  return [
    4.0767416360759583 * l - 3.3077115392580629 * m + 0.2309699031821043 * s,
    -1.2684379732850315 * l + 2.6097573492876882 * m - 0.341319376002657 * s,
    -0.0041960761386756 * l - 0.7034186179359362 * m + 1.7076146940746117 * s,
  ];
}

/** `#rrggbb` of the nearest colour that sRGB has, channel by channel. Throws `RangeError` for what is no colour. */
export function colourTextOf(colour: Oklab): string {
  if (!colour.every(Number.isFinite)) throw new RangeError(`${colour.join(', ')} is no colour`);
  const value = (light: number): number => Math.round(255 * fromLinear(Math.min(1, Math.max(0, light))));
  return `#${linearOfOklab(colour)
    .map((light) => value(light).toString(16).padStart(2, '0'))
    .join('')}`;
}

/** OKLab of `#rrggbb`. */
export function oklabOfText(text: string): Oklab {
  const colour = Number.parseInt(text.slice(1), 16);
  return oklab(colour >> 16, (colour >> 8) & 255, colour & 255);
}
