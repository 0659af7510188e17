/**
 * A chart on a sheet of paper, as real ones are: printed or drawn by hand, with
 * lines that are faint or broken, numbers and a title around it, strokes that
 * leave their cells. Written from how such sheets look; it knows nothing of
 * the code that reads them.
 */
import type { Grid } from '@shared/grid/index.ts';
import { isInFeedHole, isOnOutline, type Ends } from './ends.ts';
import { grain, ripple } from './random.ts';
import { legendAt } from './legend.ts';
import { isInSymbol, type SymbolName } from './symbols.ts';

export type Rgb = readonly [number, number, number];

/** How the cells of one yarn are marked. */
export type Mark =
  | { readonly kind: 'none' }
  | { readonly kind: 'printed'; readonly colour: Rgb }
  /** A felt pen: leaves its cell, in strokes that show, and the lines show through. */
  | { readonly kind: 'felt'; readonly colour: Rgb; readonly overrun: number }
  | { readonly kind: 'ink'; readonly colour: Rgb }
  /** Strokes side by side, `angle` in degrees, `apart` in cells. */
  | { readonly kind: 'hatched'; readonly colour: Rgb; readonly angle: number; readonly apart: number }
  /** To and fro without lifting the pencil. */
  | { readonly kind: 'scribbled'; readonly colour: Rgb }
  | { readonly kind: 'crossed'; readonly colour: Rgb; readonly width: number }
  /** Seen through: what lies below the card. */
  | { readonly kind: 'hole'; readonly radius: number }
  | {
      readonly kind: 'symbol';
      readonly symbol: SymbolName;
      readonly colour: Rgb;
      readonly width: number;
      readonly size: number;
      readonly strength: number;
      readonly on: Rgb | null;
    };

export interface Lines {
  readonly colour: Rgb;
  /** In cells. */
  readonly width: number;
  /** Every so many lines one is thicker; 0: none. */
  readonly every: number;
  readonly thicker: number;
  /** Share of each line that is missing. */
  readonly broken: number;
  /** Lines go on over the whole sheet, as on squared paper. */
  readonly goOn: boolean;
  /** Lines fade out towards this side. */
  readonly fadesTo: 'nowhere' | 'left' | 'right';
}

export interface DrawnChart extends Ends {
  readonly grid: Grid;
  /** Height of a cell for a width of 1. */
  readonly cellHeight: number;
  readonly paper: Rgb;
  readonly table: Rgb;
  readonly lines: Lines | null;
  /** By palette index. */
  readonly marks: readonly Mark[];
  /** Paper around the chart, in cells. */
  readonly margin: number;
  readonly hasNumbers: boolean;
  readonly hasTitle: boolean;
  /** Each yarn with a word, beside the chart. */
  readonly hasLegend?: boolean;
  /** Dust and specks: share of the small squares (a fifth of a cell) that have one. */
  readonly specks: number;
  readonly seed: number;
}

const WRITING: Rgb = [50, 48, 52];

/** The colour of the sheet at a place in cells from the chart's top left corner, x to the right, y down. */
export function painterOf(chart: DrawnChart): (x: number, y: number) => Rgb {
  const { grid, marks, lines, paper, table, margin, outline, feed, seed } = chart;
  const { width, height } = grid;
  const wander = Math.max(...marks.map(wanderOf));
  const isPrinted = marks.some(({ kind }) => kind === 'printed' || kind === 'symbol');
  const yarnAt = (column: number, fromTop: number): number =>
    column < 0 || fromTop < 0 || column >= width || fromTop >= height
      ? -1
      : (grid.cells[(height - 1 - fromTop) * width + column] as number);

  const marked = (x: number, y: number, under: Rgb): Rgb => {
    // A hand does not stop at the line: the border of what it filled wanders.
    const wx = wander > 0 ? x + wander * ripple(x * 2.3, y * 2.3, seed) : x;
    const wy = wander > 0 ? y + wander * ripple(x * 2.3, y * 2.3, seed + 1) : y;
    const column = Math.floor(wx);
    const fromTop = Math.floor(wy);
    const yarn = yarnAt(column, fromTop);
    const mark = marks[yarn];
    if (mark === undefined) return under;
    return inked(mark, wx - column - 0.5, wy - fromTop - 0.5, column, fromTop, under, chart);
  };

  const onLines = (x: number, y: number): number => {
    if (!lines) return 0;
    const reaches =
      lines.goOn || (x > -lines.width && y > -lines.width && x < width + lines.width && y < height + lines.width);
    if (!reaches) return 0;
    const there = Math.max(lineAt(x, y, lines, seed), lineAt(y, x, lines, seed + 7));
    if (lines.fadesTo === 'nowhere') return there;
    const along = x / width;
    return there * Math.max(0.15, Math.min(1, lines.fadesTo === 'left' ? 0.25 + along : 1.25 - along));
  };

  const inLegend = (x: number, y: number, under: Rgb): Rgb => {
    const there = legendAt(marks.length, width, x, y);
    if (there?.kind === 'letter') return isStroke(there.x, there.y, there.letter + 900, seed) ? WRITING : under;
    const mark = there && marks[there.yarn];
    if (!there || !mark) return under;
    if (Math.max(Math.abs(there.x), Math.abs(there.y)) > 0.46) return WRITING;
    return inked(mark, there.x, there.y, width + 3, there.yarn, under, chart);
  };

  return (x, y) => {
    if (x < -margin || y < -margin || x > width + margin || y > height + margin) return table;
    const fibre = 2.5 * ripple(x * 9, y * 9, seed + 3) + 1.5 * ripple(x * 0.4, y * 0.4, seed + 4);
    let colour: Rgb = [paper[0] + fibre, paper[1] + fibre, paper[2] + fibre];
    const line = onLines(x, y);
    if (line > 0 && !isPrinted) colour = mixed(colour, (lines as Lines).colour, line);
    colour = marked(x, y, colour);
    if (line > 0 && isPrinted) colour = mixed(colour, (lines as Lines).colour, line);
    if (outline && isOnOutline(outline, grid, x, y, seed)) colour = mixed(colour, outline.colour, 0.9);
    if (feed && isInFeedHole(feed, grid, x, y)) colour = table;
    if (isWritten(chart, x, y)) colour = WRITING;
    if (chart.hasLegend) colour = inLegend(x, y, colour);
    if (chart.specks > 0 && grain(Math.floor(x * 5), Math.floor(y * 5), seed + 11) < chart.specks)
      colour = mixed(colour, WRITING, 0.8);
    return colour;
  };
}

function wanderOf(mark: Mark): number {
  switch (mark.kind) {
    case 'felt':
      return mark.overrun;
    case 'ink':
      return 0.05;
    case 'hatched':
    case 'scribbled':
      return 0.1;
    case 'crossed':
      return 0.08;
    default:
      return 0;
  }
}

/** What a mark leaves at a place about the middle of its cell. */
function inked(mark: Mark, x: number, y: number, column: number, fromTop: number, under: Rgb, chart: DrawnChart): Rgb {
  const { seed, table } = chart;
  switch (mark.kind) {
    case 'none':
      return under;
    case 'printed':
      return mark.colour;
    case 'ink':
      return mixed(under, mark.colour, 0.94 + 0.06 * ripple((column + x) * 3, (fromTop + y) * 3, seed + 5));
    case 'felt': {
      // Where strokes lie over each other the colour is deeper.
      const deep = 0.82 + 0.14 * ripple((column + x) * 1.5, (fromTop + y) * 7, seed + 6);
      return through(under, mark.colour, deep);
    }
    case 'hatched': {
      const turn = (mark.angle * Math.PI) / 180;
      const across = (column + x) * Math.sin(turn) + (fromTop + y) * Math.cos(turn);
      const bend = 0.2 * ripple((column + x) * 1.3, (fromTop + y) * 1.3, seed + 8);
      const phase = (across / mark.apart + bend) % 1;
      const isOn = Math.abs(phase - Math.floor(phase) - 0.5) < 0.27;
      return isOn ? mixed(under, mark.colour, 0.7 + 0.25 * grain(column, fromTop, seed + 9)) : under;
    }
    case 'scribbled': {
      const way = y + 0.5 + 0.06 * ripple(column * 3 + x * 4, fromTop, seed + 8);
      const to = 0.42 * Math.cos(way * Math.PI * 9);
      const isOn = Math.abs(x - to) < 0.13 + 0.06 * Math.abs(Math.sin(way * Math.PI * 9));
      return isOn ? mixed(under, mark.colour, 0.75) : under;
    }
    case 'crossed': {
      const tilt = 0.12 * (grain(column, fromTop, seed + 9) - 0.5);
      const [cx, cy] = [x + tilt * y, y - tilt * x];
      const isOn = Math.abs(Math.abs(cx) - Math.abs(cy)) < mark.width * 0.7 && Math.abs(cx) < 0.38;
      return isOn ? mixed(under, mark.colour, 0.9) : under;
    }
    case 'hole':
      return Math.hypot(x, y) < mark.radius ? mixed(table, [0, 0, 0], 0.25 * Math.max(0, 0.5 - x - y)) : under;
    case 'symbol': {
      const ground = mark.on ?? under;
      return isInSymbol(mark.symbol, x / mark.size, y / mark.size, mark.width)
        ? mixed(ground, mark.colour, mark.strength)
        : ground;
    }
  }
}

/** How strongly a line that runs at whole numbers of `place` is there, 0 … 1. */
function lineAt(place: number, along: number, lines: Lines, seed: number): number {
  const nearest = Math.round(place);
  const isThick = lines.every > 0 && nearest % lines.every === 0;
  const half = (lines.width * (isThick ? lines.thicker : 1)) / 2;
  if (Math.abs(place - nearest) >= half) return 0;
  if (lines.broken > 0 && !isThick && grain(nearest, Math.floor(along * 3), seed + 13) < lines.broken) return 0;
  return 1;
}

/** Numbers beside every fifth row and column, and lines of writing above: strokes that look like writing, not letters. */
function isWritten({ grid, hasNumbers, hasTitle, margin, seed }: DrawnChart, x: number, y: number): boolean {
  const { width, height } = grid;
  if (hasNumbers && margin >= 2.5) {
    const beside = x > width + 0.3 && x < width + 1.7 && y > 0 && y < height;
    if (beside) {
      const fromBottom = height - Math.floor(y);
      if (fromBottom % 5 === 0)
        return isStroke(
          ((x - width - 0.3) / 0.7) % 1,
          y - Math.floor(y),
          fromBottom * 2 + Math.floor((x - width - 0.3) / 0.7),
          seed,
        );
    }
    const below = y > height + 0.3 && y < height + 1.3 && x > 0 && x < width;
    if (below) {
      const fromRight = width - Math.floor(x);
      if (fromRight % 5 === 0) return isStroke(x - Math.floor(x), y - height - 0.3, fromRight + 100, seed);
    }
  }
  if (hasTitle && margin >= 3.5) {
    const above = y < -1.2 && y > -2.4 && x > 0.5 && x < width * 0.6;
    if (above) {
      const letter = Math.floor(x / 0.9);
      return grain(letter, 1, seed + 19) > 0.15 && isStroke(x / 0.9 - letter, (y + 2.4) / 1.2, letter + 500, seed);
    }
  }
  return false;
}

/** A figure of strokes in a box of 0 … 1: a ring or a bar, by chance. */
function isStroke(u: number, v: number, salt: number, seed: number): boolean {
  if (u < 0.15 || u > 0.85 || v < 0.1 || v > 0.9) return false;
  const kind = Math.floor(4 * grain(salt, 3, seed + 17));
  if (kind === 0) return Math.abs(u - 0.5) < 0.1;
  if (kind === 1) return Math.abs(Math.hypot((u - 0.5) * 1.2, v - 0.5) - 0.3) < 0.09;
  if (kind === 2) return Math.abs(v - 0.15) < 0.09 || Math.abs(u - 0.75 + 0.5 * v) < 0.1;
  return Math.abs(v - 0.5) < 0.09 || Math.abs(u - 0.25) < 0.09 || Math.abs(v - 0.85) < 0.07;
}

/** `share` of `over` upon `under`. */
export function mixed(under: Rgb, over: Rgb, share: number): Rgb {
  return [
    under[0] + (over[0] - under[0]) * share,
    under[1] + (over[1] - under[1]) * share,
    under[2] + (over[2] - under[2]) * share,
  ];
}

/** A clear ink: what lies below darkens it. */
function through(under: Rgb, ink: Rgb, depth: number): Rgb {
  return [
    under[0] * (1 - depth + (depth * ink[0]) / 255),
    under[1] * (1 - depth + (depth * ink[1]) / 255),
    under[2] * (1 - depth + (depth * ink[2]) / 255),
  ];
}
