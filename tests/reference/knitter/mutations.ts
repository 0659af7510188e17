/**
 * Mistakes in a running order: each act dropped, done twice, moved by a row
 * either way, and put at the other side where it has one. The knitter has to
 * stop at each, or come to something else than with the order as it was,
 * except where hands can do it without harm.
 */
import { harmless } from './harmless.ts';
import type { Knitted } from './knitter.ts';
import type { ActJson, ActName, OrderJson, StopJson, StretchJson } from './order.ts';
import { atOtherEdge, replay, type Standing } from './replay.ts';
import { withAct } from './sequence.ts';

export type Mistake = 'dropped' | 'doubled' | 'a row early' | 'a row late' | 'at the other side';

export interface Mutation {
  readonly mistake: Mistake;
  readonly act: ActName;
  /** Of the stop whose act it is. */
  readonly reading: number;
  readonly order: OrderJson;
  /** Why the mistake does no harm, so that nobody need see it; null where it has to be seen. */
  readonly harmless: string | null;
}

/** Every mistake of one act, one after another, in an order and what was knitted by it. */
export function mutations(order: OrderJson, knitted: Knitted): Mutation[] {
  const standing = replay(order);
  return order.flatMap((stop, index) =>
    stop.kind === 'stop'
      ? stop.acts.flatMap((act, at) =>
          mistakesWith(order, index, at, standing.before.get(act) as Standing).map(([mistake, mutated]): Mutation => ({
            mistake,
            act: act.act,
            reading: stop.counter,
            order: mutated,
            harmless: harmless({ act, mistake, stop, order, standing, knitted }),
          })),
        )
      : [],
  );
}

function mistakesWith(order: OrderJson, index: number, at: number, before: Standing): [Mistake, OrderJson][] {
  const stop = order[index] as StopJson;
  const act = stop.acts[at] as ActJson;
  const withActs = (acts: ActJson[]): OrderJson => order.with(index, { ...stop, acts });
  const dropped = withActs(stop.acts.toSpliced(at, 1));
  const found: [Mistake, OrderJson][] = [
    ['dropped', dropped],
    ['doubled', withActs(stop.acts.toSpliced(at, 0, act))],
  ];
  const early = put(dropped, stop.counter - 1, act);
  if (early) found.push(['a row early', early]);
  const late = put(dropped, stop.counter + 1, act);
  if (late) found.push(['a row late', late]);
  const mirrored = atOtherSide(act, before);
  if (mirrored) found.push(['at the other side', withActs(stop.acts.with(at, mirrored))]);
  return found;
}

/** Puts an act to a reading, in its turn among those that are there; null where there is no such reading. */
function put(order: OrderJson, reading: number, act: ActJson): OrderJson | null {
  const parted = withStopAt(order, reading);
  const index = parted.findIndex((item) => item.kind === 'stop' && item.counter === reading);
  const stop = parted[index];
  if (stop?.kind !== 'stop') return null;
  return parted.with(index, { ...stop, acts: withAct(stop.acts, act) });
}

/** The same rows with a stop, without acts at first, at a reading that lay in a stretch. */
function withStopAt(order: OrderJson, reading: number): OrderJson {
  return order.flatMap((item): OrderJson => {
    const row = reading + 1;
    if (item.kind === 'stop' || row < item.first || row > item.last) return [item];
    const { kind: _, first, last, carriageAt, ...holding } = item;
    const away = carriageAt === 'left' ? 'right' : 'left';
    const sideOf = (one: number): 'left' | 'right' => ((one - first) % 2 === 0 ? carriageAt : away);
    const rows = (from: number, to: number): StretchJson[] =>
      from > to ? [] : [{ kind: 'stretch', first: from, last: to, carriageAt: sideOf(from), ...holding }];
    const stop: StopJson = {
      kind: 'stop',
      id: `at ${reading}`,
      counter: reading,
      row,
      carriageAt: sideOf(row),
      acts: [],
      ...holding,
    };
    return [...rows(first, reading), stop, ...rows(row + 1, last)];
  });
}

/** The act at the other side, or null for one that has none. */
function atOtherSide(act: ActJson, before: Standing): ActJson | null {
  switch (act.act) {
    case 'increase':
    case 'decrease':
    case 'cast-off':
    case 'cast-on-more':
      return atOtherEdge(act, before);
    case 'wrap':
      return { ...act, edge: act.edge === 'left' ? 'right' : 'left' };
    case 'hang-hem':
      return { ...act, edgeLoop: act.edgeLoop === 'left' ? 'right' : 'left' };
    case 'finish': {
      const isAtLeft = act.startsAt === 'left' || act.startsAt === act.needles[0];
      return { ...act, startsAt: isAtLeft ? 'right' : 'left' };
    }
    default:
      return null;
  }
}
