/** A written legend beside a chart: a cell of each yarn with a word behind it. */

/** The right-hand margin that a legend needs, in cells. */
export const LEGEND_MARGIN = 8;

/** From the right edge of the chart to the cells of the legend, and to its words. */
const CELLS = 2.4;
const WORDS = 3.8;
/** From one line of the legend to the next. */
const LINE = 1.5;

/**
 * What of the legend stands at a place: a place of the cell of a yarn, from its
 * middle, or a place of a letter, 0 … 1; null beside it.
 */
export function legendAt(
  yarns: number,
  chartWidth: number,
  x: number,
  y: number,
):
  | { readonly kind: 'cell'; readonly yarn: number; readonly x: number; readonly y: number }
  | { readonly kind: 'letter'; readonly letter: number; readonly x: number; readonly y: number }
  | null {
  const yarn = Math.floor(y / LINE);
  const down = y - yarn * LINE;
  if (y < 0 || yarn >= yarns || down > 1) return null;
  const across = x - chartWidth;
  if (across >= CELLS && across < CELLS + 1) {
    return { kind: 'cell', yarn, x: across - CELLS - 0.5, y: down - 0.5 };
  }
  const along = (across - WORDS) / 0.6;
  const letters = 4 + (yarn % 3);
  if (along < 0 || along >= letters) return null;
  return { kind: 'letter', letter: yarn * 10 + Math.floor(along), x: along - Math.floor(along), y: down };
}
