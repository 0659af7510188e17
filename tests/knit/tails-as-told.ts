/** The tails that an order leaves where it cuts yarn, and what it keeps to take the piece off with. */
import type { Knitted, OrderJson } from '../reference/knitter/index.ts';
import { END_MM, stitchMm, type Gauging } from '../reference/knitter/measure.ts';
import { positionOf } from '../reference/knitter/needles.ts';

/** What is told otherwise than knitters do it; empty where all is right. */
export function tailsDiffer(order: OrderJson, { finish, fabric }: Knitted, gauging: Gauging): string[] {
  const [off] = finish;
  const wrong: string[] = [];
  for (const item of order) {
    if (item.kind !== 'stop') continue;
    for (const act of item.acts) {
      const mm = act.act === 'cut' || (act.act === 'unthread' && act.waitsAt === 'cut') ? (act.mm ?? null) : null;
      const isCastOffWith = off?.how === 'cast-off' && item.row === null && act.act === 'unthread' && act.feeder === 1;
      const should = isCastOffWith ? off.mm : END_MM;
      if (mm !== null && mm !== should)
        wrong.push(`${mm} mm are left where a yarn is cut at ${item.counter}, not ${should}`);
    }
  }
  const last = fabric.at(-1);
  if (!off || !last) return wrong;
  const [left, right] = last.edges.map(positionOf) as [number, number];
  const width = (right - left + 1) * stitchMm(gauging(last.row));
  // Common practice, no source: 3 to 4 widths to cast off and a tail; a thread is a width and two tails. In whole cm.
  const [least, most] =
    off.how === 'cast-off'
      ? [3 * width + END_MM, 4 * width + END_MM]
      : off.how === 'on-a-thread'
        ? [width + 2 * END_MM, width + 2 * END_MM]
        : [0, 0];
  const kept = off.mm ?? 0;
  if (kept < least - 1e-6 || kept > most + 10) wrong.push(`${kept} mm are kept to take ${width} mm off (${off.how})`);
  return wrong;
}
