/** Cells in two levels: ink on paper, or holes in a card. */
import { luma } from './luma.ts';
import { otsu } from './otsu.ts';
import type { CellSamples } from './sample.ts';
import { timesUsual, type Sorted } from './sort-colours.ts';

/** Which of the two levels is the figure. */
export type FigureLevel = 'dark' | 'light';

/** The levels are two only if they lie this many times their spread apart … */
const LEAST_APART = 4;

/** … and at least so much, 0 … 255. A blank chart has one. */
const LEAST_CONTRAST = 10;

/** Cells of one level differ by about this at least. */
const LEAST_USUAL = 2;

/** Ground is 0 and white, figure 1 and black; `samples` under even light. */
export function sortLevels(samples: CellSamples, figure: FigureLevel): Sorted {
  const count = samples.columns * samples.rows;
  const levels = Float64Array.from({ length: count }, (_, cell) => luma(samples.means, cell * 3));
  const highest = levels.reduce((most, value) => Math.max(most, value), 1);
  // Light was taken off, so that white may lie above 255; the histogram spans what there is.
  const binOf = (value: number): number => Math.max(0, Math.min(255, Math.round((value / highest) * 255)));
  const histogram = new Uint32Array(256);
  for (const value of levels) histogram[binOf(value)] = (histogram[binOf(value)] as number) + 1;
  const { threshold, lowerMean, upperMean } = otsu(histogram);
  const border = borderBetween(histogram, threshold);
  const spread = spreadWithin(histogram, threshold, lowerMean, upperMean);
  const isBlank = upperMean - lowerMean < Math.max(LEAST_CONTRAST, LEAST_APART * spread);
  const yarns = new Uint8Array(count);
  const margins = new Float32Array(count).fill(1);
  const strayQuarters = new Uint8Array(count);
  const isFigure = (value: number): boolean => !isBlank && (figure === 'dark' ? value < border : value > border);
  levels.forEach((value, cell) => {
    const at = (value / highest) * 255;
    yarns[cell] = isFigure(at) ? 1 : 0;
    if (isBlank) return;
    const own = at < border ? lowerMean : upperMean;
    margins[cell] = Math.min(1, Math.abs(at - border) / Math.max(1, Math.abs(own - border)));
    for (let quarter = 0; quarter < 4; quarter++) {
      const there = (luma(samples.quarters, cell * 12 + quarter * 3) / highest) * 255;
      if (there < border !== at < border) strayQuarters[cell] = (strayQuarters[cell] as number) + 1;
    }
  });
  const own = Float64Array.from(levels, (value) => {
    const at = (value / highest) * 255;
    // Darker than ink and lighter than paper is no doubt.
    return at < border ? Math.max(0, at - lowerMean) : Math.max(0, upperMean - at);
  });
  const distances = timesUsual(own, yarns, LEAST_USUAL);
  return { yarns, colours: ['#ffffff', '#000000'], margins, unsure: null, distances, strayQuarters, evidence: null };
}

/** Half way across the empty stretch that Otsu's threshold begins. */
function borderBetween(histogram: Uint32Array, threshold: number): number {
  let next = threshold + 1;
  while (next < 255 && histogram[next] === 0) next++;
  return (threshold + next) / 2;
}

/** The mean of the two classes' standard deviations. */
function spreadWithin(histogram: Uint32Array, threshold: number, lowerMean: number, upperMean: number): number {
  let lower = 0;
  let upper = 0;
  let inLower = 0;
  let inUpper = 0;
  histogram.forEach((count, value) => {
    if (value <= threshold) {
      inLower += count;
      lower += count * (value - lowerMean) ** 2;
    } else {
      inUpper += count;
      upper += count * (value - upperMean) ** 2;
    }
  });
  return (Math.sqrt(lower / Math.max(1, inLower)) + Math.sqrt(upper / Math.max(1, inUpper))) / 2;
}
