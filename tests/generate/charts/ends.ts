/**
 * What shows where a chart ends when its lines do not: people draw an outline
 * on squared paper, or a figure that goes to all its ends; a punched card has a
 * feed hole at each end of each row. Where nothing of this is drawn nobody
 * could tell from the photo.
 */
import type { Grid } from '@shared/grid/index.ts';
import type { ChartLook } from './kinds.ts';
import type { Rgb } from './drawn-chart.ts';
import { Chances, ripple } from './random.ts';

/** A line drawn with a pen around the chart, by hand; its width in cells. */
export interface Outline {
  readonly colour: Rgb;
  readonly width: number;
}

/** Holes at both ends of each row, as far from the outermost column; in cells. */
export interface FeedHoles {
  readonly radius: number;
  /** From the side of the chart to the middle of the hole. */
  readonly away: number;
}

export interface Ends {
  readonly outline: Outline | null;
  readonly feed: FeedHoles | null;
}

/** Dark ones: an outline is drawn to be seen beside the thick lines of the paper. */
const PENS: readonly Rgb[] = [
  [36, 36, 40],
  [40, 48, 96],
  [96, 30, 34],
];

/** By chances of its own, so that nothing else of a photograph depends on them. */
export function endsOf({ lines, marks }: Pick<ChartLook, 'lines' | 'marks'>, seed: number): Ends {
  const chances = new Chances(seed + 700_000);
  const isCard = marks.some(({ kind }) => kind === 'hole');
  const hasOutline = lines?.goOn === true && chances.isSo(0.7);
  return {
    outline: hasOutline ? { colour: chances.one(PENS), width: chances.between(0.2, 0.3) } : null,
    feed: isCard ? { radius: chances.between(0.22, 0.34), away: chances.between(0.8, 1.7) } : null,
  };
}

/** Cells of the figure at an end of a chart that nothing else ends. */
const AT_AN_END = 3;

/** The grid with cells of the figure in its outermost rows and columns. */
export function reachingItsEnds(grid: Grid): Grid {
  const { width, height } = grid;
  const cells = grid.cells.slice();
  const reach = (length: number, at: (i: number) => number): void => {
    const isDrawn = Array.from({ length }, (_, i) => cells[at(i)]).some((yarn) => yarn !== 0);
    const from = Math.floor((length - AT_AN_END) / 2);
    if (!isDrawn) for (let i = from; i < from + AT_AN_END; i++) cells[at(i)] = 1;
  };
  reach(width, (i) => i);
  reach(width, (i) => (height - 1) * width + i);
  reach(height, (i) => i * width);
  reach(height, (i) => i * width + width - 1);
  return { ...grid, cells };
}

/** Whether an outline runs through a place, in cells from the chart's top left corner. */
export function isOnOutline({ width: wide }: Outline, { width, height }: Grid, x: number, y: number, seed: number) {
  // A hand follows the line of the paper, but not quite.
  const wx = x + 0.06 * ripple(x * 0.7, y * 0.7, seed + 21);
  const wy = y + 0.06 * ripple(x * 0.7, y * 0.7, seed + 22);
  const away = Math.min(
    Math.abs(wx) + beyond(wy, height),
    Math.abs(wx - width) + beyond(wy, height),
    Math.abs(wy) + beyond(wx, width),
    Math.abs(wy - height) + beyond(wx, width),
  );
  return away < wide / 2;
}

function beyond(place: number, length: number): number {
  return Math.max(0, -place, place - length);
}

export function isInFeedHole({ radius, away }: FeedHoles, { width, height }: Grid, x: number, y: number): boolean {
  if (y < 0 || y >= height) return false;
  const across = Math.min(Math.abs(x + away), Math.abs(x - width - away));
  return Math.hypot(across, y - Math.floor(y) - 0.5) < radius;
}
