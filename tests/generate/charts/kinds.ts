/** Kinds of charts as people have them, each with what differs from sheet to sheet left to chance. */
import type { Ends } from './ends.ts';
import type { DrawnChart, Lines, Mark, Rgb } from './drawn-chart.ts';
import type { Chances } from './random.ts';
import { SYMBOLS } from './symbols.ts';

export const KINDS = [
  'ink',
  'pencil hatched',
  'pencil scribbled',
  'crosses',
  'felt pen',
  'punched card',
  'printed colours',
  'printed colours with symbols',
  'symbols in black and white',
] as const;
export type Kind = (typeof KINDS)[number];

/** How a person would say that its yarns are told apart. */
export type ToldBy = 'ink' | 'colours' | 'symbols';

export interface ChartLook extends Omit<DrawnChart, keyof Ends | 'grid' | 'seed'> {
  readonly toldBy: ToldBy;
}

const PAPERS: readonly Rgb[] = [
  [246, 244, 238],
  [238, 234, 224],
  [228, 224, 206],
  [242, 245, 246],
];

const TABLES: readonly Rgb[] = [
  [92, 66, 46],
  [52, 50, 54],
  [168, 148, 122],
  [70, 92, 96],
];

/** Colours as charts are printed and coloured in, apart enough that nobody takes one for another. */
const YARN_COLOURS: readonly Rgb[] = [
  [38, 52, 104],
  [186, 48, 44],
  [232, 184, 56],
  [58, 126, 74],
  [126, 82, 140],
  [226, 132, 152],
  [110, 160, 204],
  [96, 68, 50],
  [40, 40, 42],
  [150, 150, 152],
];

const INKS: readonly Rgb[] = [
  [36, 36, 40],
  [30, 42, 96],
  [120, 30, 36],
];

const GRAPHITE: Rgb = [96, 96, 100];

/** The look of one sheet of a kind, with so many yarns, the ground among them. */
export function lookOf(kind: Kind, yarns: number, chances: Chances): ChartLook {
  const paper = chances.one(PAPERS);
  const common = {
    cellHeight: kind === 'punched card' ? 1 : chances.one([1, 1, 0.8, 0.7]),
    paper,
    table: chances.one(TABLES),
    lines: linesOf(chances, kind),
    margin: chances.between(3, 5),
    hasNumbers: kind !== 'punched card' && chances.isSo(0.6),
    hasTitle: kind !== 'punched card' && chances.isSo(0.5),
    specks: chances.isSo(0.3) ? 0.0015 : 0,
  };
  const two = (mark: Mark): ChartLook => ({ ...common, marks: [{ kind: 'none' }, mark], toldBy: 'ink' });
  const colours = chances.mixed(YARN_COLOURS);
  switch (kind) {
    case 'ink':
      return two({ kind: 'ink', colour: chances.one(INKS) });
    case 'pencil hatched':
      return two({
        kind: 'hatched',
        colour: GRAPHITE,
        angle: chances.between(20, 70),
        apart: chances.between(0.2, 0.34),
      });
    case 'pencil scribbled':
      return two({ kind: 'scribbled', colour: GRAPHITE });
    case 'crosses':
      return two({ kind: 'crossed', colour: chances.one([...INKS, GRAPHITE]), width: chances.between(0.1, 0.16) });
    case 'punched card':
      return two({ kind: 'hole', radius: chances.between(0.3, 0.38) });
    case 'felt pen':
      return {
        ...common,
        marks: [
          { kind: 'none' },
          ...colours.slice(0, yarns - 1).map((colour): Mark => ({
            kind: 'felt',
            colour,
            overrun: chances.between(0.04, 0.12),
          })),
        ],
        toldBy: 'colours',
      };
    case 'printed colours':
      return {
        ...common,
        marks: [
          groundOf(chances, paper),
          ...colours.slice(0, yarns - 1).map((colour): Mark => ({ kind: 'printed', colour })),
        ],
        toldBy: 'colours',
      };
    case 'printed colours with symbols': {
      const symbols = chances.mixed(SYMBOLS);
      const width = chances.between(0.1, 0.26);
      const size = chances.between(0.8, 1.3);
      const strength = chances.between(0.6, 1);
      return {
        ...common,
        marks: [
          groundOf(chances, paper),
          ...colours.slice(0, yarns - 1).map((on, i): Mark => ({
            kind: 'symbol',
            symbol: symbols[i] ?? 'dot',
            // A bold sign is white on a dark colour and black on a light one, or black on all.
            colour: chances.isSo(0.7) && lightness(on) < 110 ? [250, 250, 250] : [28, 28, 30],
            width,
            size,
            strength,
            on,
          })),
        ],
        toldBy: 'colours',
      };
    }
    case 'symbols in black and white': {
      const symbols = chances.mixed(SYMBOLS);
      const width = chances.between(0.1, 0.22);
      const size = chances.between(0.8, 1.3);
      return {
        ...common,
        marks: [
          { kind: 'none' },
          ...Array.from({ length: yarns - 1 }, (_, i): Mark => ({
            kind: 'symbol',
            symbol: symbols[i] ?? 'dot',
            colour: [30, 30, 32],
            width,
            size,
            strength: 0.95,
            on: null,
          })),
        ],
        toldBy: 'symbols',
      };
    }
  }
}

/** So many yarns can such a chart tell apart. */
export function yarnsOf(kind: Kind, chances: Chances): number {
  switch (kind) {
    case 'felt pen':
      return chances.whole(2, 5);
    case 'printed colours':
    case 'printed colours with symbols':
      return chances.whole(2, 8);
    case 'symbols in black and white':
      return chances.whole(2, 5);
    default:
      return 2;
  }
}

function linesOf(chances: Chances, kind: Kind): Lines | null {
  if (kind === 'punched card') return null;
  const look = chances.one(['plain', 'plain', 'faint', 'broken', 'fading', 'squared'] as const);
  const grey = look === 'faint' ? chances.between(196, 214) : chances.between(90, 160);
  const blueish = look === 'squared' || chances.isSo(0.3);
  return {
    colour: blueish ? [grey * 0.9, grey, Math.min(255, grey * 1.15)] : [grey, grey, grey],
    width: chances.between(0.05, 0.09),
    every: chances.one([0, 5, 10]),
    thicker: 2,
    broken: look === 'broken' ? 0.2 : 0,
    goOn: look === 'squared',
    fadesTo: look === 'fading' ? chances.one(['left', 'right'] as const) : 'nowhere',
  };
}

function groundOf(chances: Chances, paper: Rgb): Mark {
  return chances.isSo(0.5) ? { kind: 'none' } : { kind: 'printed', colour: [paper[0] - 8, paper[1] - 6, paper[2] - 2] };
}

function lightness([red, green, blue]: Rgb): number {
  return 0.299 * red + 0.587 * green + 0.114 * blue;
}
