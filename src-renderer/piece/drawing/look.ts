/** The colours a piece is drawn with, each legible on what lies under it. */
import { contrastRatio, GRAPHIC_CONTRAST as GRAPHIC, legibleOn, twoTone } from '@shared/colour/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';

export interface Look {
  readonly paper: string;
  readonly raised: string;
  readonly ink: string;
  readonly soft: string;
  readonly accent: string;
  readonly warn: string;
  readonly control: string;
  readonly main: string;
  /** Text and lines on the main yarn. */
  readonly onMain: string;
  readonly accentOnMain: string;
  /** What groups are lined up with crosses paper, main and figure: a line within a wider one. */
  readonly guide: { readonly inner: string; readonly outer: string };
  /** A strand of main on the main yarn, told apart from the figure. */
  readonly loop: string;
  /** By palette index: a warning strand in front of what that yarn floats behind. */
  readonly warnStrand: readonly string[];
  /** By palette index: the strand itself, told apart from what it lies on. */
  readonly strand: readonly string[];
  /** The ring in an anchor, seen on main and on the first contrast. */
  readonly anchor: string;
  /** `#rrggbb` of each palette index. */
  readonly yarns: readonly string[];
}

/** Contrast of text (WCAG 2.2, 1.4.3). */
const TEXT = 4.5;

/** `token` gives the value of a colour token as it is now. */
export function lookOf(project: ProjectAt, token: (name: string) => string): Look {
  const yarns = project.yarns.map((yarn) => yarn.colour);
  const main = project.mainYarn;
  const mainColour = yarns[main] ?? '#000000';
  const contrast = yarns.find((_, index) => index !== main) ?? mainColour;
  // The main yarn floats behind the contrast, a contrast yarn behind the main.
  const behind = yarns.map((_, index) => (index === main ? contrast : mainColour));
  return {
    paper: token('paper'),
    raised: token('raised'),
    ink: token('ink'),
    soft: token('soft'),
    accent: token('accent'),
    warn: token('warn'),
    control: token('control'),
    main: mainColour,
    onMain: legibleOn(mainColour, contrastRatio(mainColour, '#ffffff') >= TEXT ? '#ffffff' : '#1d2330', TEXT),
    loop: loopOn(mainColour, contrast),
    guide: twoTone(token('accent')),
    accentOnMain: legibleOn(mainColour, token('accent'), GRAPHIC),
    warnStrand: behind.map((colour) => legibleOn(colour, '#d98a1e', GRAPHIC)),
    strand: yarns.map((colour, index) => legibleOn(behind[index] as string, colour, GRAPHIC)),
    anchor: legibleOn(contrast, mainColour, GRAPHIC),
    yarns,
  };
}

/** Dark or light, whichever is seen on the main yarn and is not mistaken for the figure. */
function loopOn(main: string, figure: string): string {
  const seen = ['#141821', '#ffffff'].filter((colour) => contrastRatio(main, colour) >= GRAPHIC);
  return seen.sort((one, other) => contrastRatio(figure, other) - contrastRatio(figure, one))[0] ?? '#ffffff';
}
