/**
 * Where colour changes along a straightened chart.
 *
 * For each place along one direction the share of the chart, measured across
 * that direction, that has an edge there. A line that is faint, thick or
 * broken, and a row of cells that merely meet, all give a share that stands
 * out; a dark mark inside a cell does not, since it is short. That is why
 * edges are counted, cut off at a ceiling, and not added up by their strength,
 * and why edges that slant, as those of crosses and round holes, count less.
 */
import type { Picture } from './picture.ts';

/** Across: places are columns of pixels, and edges between left and right count. Up: rows of pixels, from the top. */
export type Direction = 'across' | 'up';

/**
 * The chart is cut into so many bands that lie along the direction, each
 * with its own shares: where the sheet was not flat, lines are not straight.
 */
export const BANDS = 6;

/** Pixels averaged along a line before looking for an edge in it; noise falls, lines stay. */
const RUN = 4;

/** Edges count in full from this many times the usual difference, which is noise … */
const ABOVE_NOISE = 4;

/** A slanting edge, as of a cross or a round hole, counts less by this many times its share that runs the other way. */
const SLANT_COST = 1.5;

/** Differences up to this are shading, in steps of one or two of 256. */
const SHADING = 6;

/** … and from this difference at least, the sum of three channels 0 … 255. */
const LEAST_CEILING = 24;

/** One array a band, first band first (top or left); `shares[place]` is 0 … 1. */
export function edgeShares(picture: Picture, direction: Direction, most = BANDS): Float64Array[] {
  const isAcross = direction === 'across';
  const length = isAcross ? picture.width : picture.height;
  const thickness = isAcross ? picture.height : picture.width;
  const runs = Math.max(1, Math.floor(thickness / RUN));
  const { along, sideways } = runDifferences(picture, isAcross, length, runs);
  const noise = medianOf(along);
  const ceiling = Math.max(LEAST_CEILING, ABOVE_NOISE * noise);
  const bands = Math.min(most, runs);
  return Array.from({ length: bands }, (_, band) => {
    const first = Math.floor((band * runs) / bands);
    const last = Math.floor(((band + 1) * runs) / bands);
    const shares = new Float64Array(length);
    for (let run = first; run < last; run++) {
      for (let place = 0; place < length; place++) {
        const slant = Math.max(0, (sideways[run * length + place] as number) - 2 * noise);
        const straight = Math.max(0, (along[run * length + place] as number) - SLANT_COST * slant - SHADING);
        shares[place] = (shares[place] as number) + Math.min(1, straight / ceiling);
      }
    }
    return shares.map((sum) => sum / (last - first));
  });
}

interface Differences {
  /** By how much the two sides of a place differ, summed over the channels. */
  readonly along: Uint16Array;
  /** By how much the first half of the run there differs from the second. */
  readonly sideways: Uint16Array;
}

/** For each run of pixels and each place. */
function runDifferences({ width, rgba }: Picture, isAcross: boolean, length: number, runs: number): Differences {
  const step = isAcross ? 4 : width * 4;
  const sideStep = isAcross ? width * 4 : 4;
  const along = new Uint16Array(runs * length);
  const sideways = new Uint16Array(runs * length);
  const firstHalf = new Int32Array(length * 3);
  const secondHalf = new Int32Array(length * 3);
  for (let run = 0; run < runs; run++) {
    firstHalf.fill(0);
    secondHalf.fill(0);
    for (let line = 0; line < RUN; line++) {
      const half = line < RUN / 2 ? firstHalf : secondHalf;
      const start = (run * RUN + line) * sideStep;
      for (let place = 0, to = 0; place < length; place++, to += 3) {
        const at = start + place * step;
        for (let channel = 0; channel < 3; channel++) {
          // Past the last pixel only where the picture is thinner than one run.
          half[to + channel] = (half[to + channel] as number) + (rgba[at + channel] ?? 0);
        }
      }
    }
    for (let place = 1; place < length - 1; place++) {
      let across = 0;
      let slant = 0;
      for (let i = place * 3; i < place * 3 + 3; i++) {
        const before = (firstHalf[i - 3] as number) + (secondHalf[i - 3] as number);
        const after = (firstHalf[i + 3] as number) + (secondHalf[i + 3] as number);
        across += Math.abs(after - before);
        slant += Math.abs((firstHalf[i] as number) - (secondHalf[i] as number));
      }
      along[run * length + place] = across / RUN;
      sideways[run * length + place] = (2 * slant) / RUN;
    }
  }
  return { along, sideways };
}

/** The middle one of many differences, by counting them (they are whole and at most 765). */
function medianOf(differences: Uint16Array): number {
  const counts = new Uint32Array(766);
  for (const difference of differences) counts[difference] = (counts[difference] as number) + 1;
  let below = 0;
  for (let value = 0; value < counts.length; value++) {
    below += counts[value] as number;
    if (below * 2 >= differences.length) return value;
  }
  return 0;
}
