/** How edges that come back evenly meet the two ends of a chart. */
import { phaseAround } from './phase.ts';

/** Windows that the chart is cut into; as many again overlap them by half. */
const WINDOWS = 4;

/** How far from the two ends the nearest edges lie that come back `times` times: the mean, in cells, 0 … ½. */
export function endMisfit(edges: readonly Float64Array[], times: number): number {
  const { first, last } = endsOf(edges, times);
  return (Math.abs(first - Math.round(first)) + Math.abs(last - Math.round(last))) / 2;
}

/** Whether in every band for itself edges lie at both ends, or no further off than `most` of a cell; on bent paper they do not. */
export function meetsEnds(bands: readonly Float64Array[], times: number, most: number): boolean {
  return bands.every((band) => {
    const { first, last } = endsOf([band], times);
    return Math.abs(first - Math.round(first)) <= most && Math.abs(last - Math.round(last)) <= most;
  });
}

/**
 * The whole number of cells whose outermost edges lie nearest to the two ends
 * of the chart. With corners set a third of a cell inside at both ends the
 * edges come back a good half too few times, and only their place tells.
 */
export function countAtEnds(edges: readonly Float64Array[], times: number): { count: number; misfit: number } {
  const { first, last } = endsOf(edges, times);
  let best = { count: Math.round(times), misfit: Infinity };
  let leastCost = Infinity;
  for (const from of [Math.floor(first), Math.ceil(first)]) {
    for (const to of [Math.floor(last), Math.ceil(last)]) {
      const misfit = (Math.abs(from - first) + Math.abs(to - last)) / 2;
      const cost = 2 * misfit + 0.3 * Math.abs(to - from - (last - first));
      if (cost < leastCost) {
        leastCost = cost;
        best = { count: to - from, misfit };
      }
    }
  }
  return best;
}

/**
 * Counting edges from some one on: the number at which the chart begins and
 * the one at which it ends, whole where there is an edge. Followed from window
 * to window, since through a lens that bulges cells are wider in the middle.
 */
function endsOf(edges: readonly Float64Array[], times: number): { first: number; last: number } {
  const length = (edges[0] as Float64Array).length;
  const width = length / WINDOWS;
  let before = 0;
  const phases: number[] = [];
  for (let window = 0; window < 2 * WINDOWS - 1; window++) {
    let { phase } = phaseAround(edges, times, ((window + 1) * width) / 2, width);
    if (window > 0) phase += Math.round(before - phase);
    phases.push(phase);
    before = phase;
  }
  // The outermost windows' middles lie half a window inside; their lean is carried on to the ends.
  const [a, b] = [phases[0] as number, phases[1] as number];
  const [y, z] = [phases.at(-2) as number, phases.at(-1) as number];
  return { first: -(a + (a - b)), last: times - (z + (z - y)) };
}
