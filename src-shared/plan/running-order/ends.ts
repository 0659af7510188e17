/** Weights, and the end of the piece. */
import { opposite, widthOf } from '../../bed/index.ts';
import { gaugeAt, lengthMm, stitchWidthMm } from '../../piece/index.ts';
import { CAST_OFF_WIDTHS, TAIL_MM } from '../../yarn/index.ts';
import type { Work } from './work.ts';

export { TAIL_MM };

/** Weights go up when so much has been knitted below the needles since they were hung (common practice, no source). */
const WEIGHTS_MOVED_MM = { least: 150, most: 200 } as const;

export function hangWeights(work: Work): void {
  if (work.piece.machine.weights) work.do(0, { kind: 'weights', do: 'hang' });
}

/** Moves them up: where something is done anyway, else where it is time. Looks at all acts, so it comes last. */
export function moveWeights(work: Work): void {
  if (!work.piece.machine.weights) return;
  const { gauges } = work.plan;
  let hung = 0;
  for (let reading = 1; reading < work.last; reading++) {
    const acts = work.actsAt(reading);
    if (acts?.some((act) => act.kind === 'weights')) {
      hung = reading;
      continue;
    }
    const mm = lengthMm(gauges, hung + 1, reading);
    if (mm < (acts ? WEIGHTS_MOVED_MM.least : WEIGHTS_MOVED_MM.most)) continue;
    work.doFirst(reading, { kind: 'weights', do: 'move' });
    hung = reading;
  }
}

/** How much yarn the end of the piece takes, in mm, up to whole cm; null for waste yarn. */
export function finishingMm(work: Work): number | null {
  const { piece, plan, last } = work;
  const edges = work.row(last)?.edges;
  const widthMm = edges ? widthOf(edges) * stitchWidthMm(gaugeAt(plan.gauges, last)) : 0;
  const mm = {
    'cast-off': CAST_OFF_WIDTHS.most * widthMm + TAIL_MM,
    'on-a-thread': widthMm + 2 * TAIL_MM,
    'waste-yarn': null,
  }[piece.ends];
  return mm === null ? null : Math.ceil(mm / 10) * 10;
}

/** Off the needles, from where the carriage stands. */
export function finish(work: Work): void {
  const { piece, last, join } = work;
  const row = work.row(last);
  if (!row) return;
  // A hem that ends the piece was hung with the weights off.
  if (piece.machine.weights && join?.at !== last) work.do(last, { kind: 'weights', do: 'off' });
  if (piece.ends === 'cast-off' && !row.first)
    work.do(last, { kind: 'thread', feeder: 1, yarn: piece.mainYarn, ball: null });
  work.do(last, {
    kind: 'finish',
    how: piece.ends,
    needles: row.edges,
    startsAt: opposite(row.from),
    mm: finishingMm(work),
  });
}
