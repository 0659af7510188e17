/** The colours a chart is drawn with, from the tokens of the page and the yarns. */
import { GRAPHIC_CONTRAST, legibleOn, twoTone, relativeLuminance } from '@shared/colour/index.ts';
import type { LineColours } from '../../canvas/index.ts';

export interface MotifLook {
  readonly paper: string;
  readonly surface: string;
  readonly ink: string;
  readonly raised: string;
  readonly warn: string;
  readonly accent: string;
  readonly onAccent: string;
  readonly lines: LineColours;
  /** Hatching on the main yarn. */
  readonly hatch: string;
  /** Axes and seams cross all yarns: a line within a wider one. */
  readonly guide: { readonly inner: string; readonly outer: string };
}

/**
 * `colours` are those of the yarns, `main` that of the ground; `token` gives
 * the value of a colour token as it is now.
 */
export function motifLook(colours: readonly string[], main: string, token: (name: string) => string): MotifLook {
  const ink = token('ink');
  const grey = lineGrey(colours);
  return {
    paper: token('paper'),
    surface: token('surface'),
    ink,
    raised: token('raised'),
    warn: token('warn'),
    accent: token('accent'),
    onAccent: token('on-accent'),
    // Two more digits: the alpha.
    lines: { plain: `${grey}66`, fifth: `${grey}b3`, tenth: grey, edge: ink },
    hatch: legibleOn(main, main, GRAPHIC_CONTRAST),
    guide: twoTone(token('accent')),
  };
}

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

/** Strokes `path`, dashed if `dash` holds lengths in pixels, `thick` pixels strong. */
export function strokeTwoTone(
  context: CanvasRenderingContext2D,
  look: MotifLook,
  path: Path2D,
  dash: readonly number[],
  { thick = 1.25 } = {},
): void {
  context.save();
  context.setLineDash([...dash]);
  context.strokeStyle = look.guide.outer;
  context.lineWidth = thick + 1.75;
  context.stroke(path);
  context.strokeStyle = look.guide.inner;
  context.lineWidth = thick;
  context.stroke(path);
  context.restore();
}
