/** An order as its acts say it stands before each of them: what a mutation needs to know to be a likely mistake. */
import { each, labelOf, positionOf } from './needles.ts';
import type { ActJson, OrderJson, StopJson } from './order.ts';

export interface Standing {
  /** Outermost needles in work. */
  readonly edges: readonly [number, number];
  readonly carriage: 'plain' | 'pattern';
  readonly isSelecting: boolean;
  readonly hasEndNeedles: boolean;
  readonly tension: string;
  readonly start: string;
  /** First row that the pattern set last is set for; null before any is. */
  readonly patternFrom: number | null;
  readonly isHung: boolean;
}

const AT_FIRST: Standing = {
  edges: [0, 0],
  carriage: 'plain',
  isSelecting: false,
  hasEndNeedles: false,
  tension: '',
  start: '',
  patternFrom: null,
  isHung: false,
};

/** What stands before an act, and behind all acts of a reading. */
export interface Replay {
  readonly before: ReadonlyMap<ActJson, Standing>;
  /** While a row is knitted. */
  readonly inRow: (row: number) => Standing;
}

export function replay(order: OrderJson): Replay {
  const before = new Map<ActJson, Standing>();
  const changes: { readonly row: number; readonly standing: Standing }[] = [];
  let standing = AT_FIRST;
  for (const stop of order) {
    if (stop.kind !== 'stop') continue;
    for (const act of stop.acts) {
      before.set(act, standing);
      standing = after(standing, act);
    }
    changes.push({ row: rowOf(stop), standing });
  }
  return { before, inRow: (row) => changes.findLast((change) => change.row <= row)?.standing ?? AT_FIRST };
}

/** The row that follows a stop, behind the last one too. */
export function rowOf(stop: StopJson): number {
  return stop.counter + 1;
}

export function after(standing: Standing, act: ActJson): Standing {
  const [first, last] = standing.edges;
  switch (act.act) {
    case 'cast-on':
      return { ...standing, start: act.how, edges: [positionOf(act.needles[0]), positionOf(act.needles[1])] };
    case 'increase':
    case 'cast-on-more': {
      const more = countOf(act);
      return { ...standing, edges: act.edge === 'left' ? [first - more, last] : [first, last + more] };
    }
    case 'decrease':
    case 'cast-off': {
      const fewer = countOf(act);
      return { ...standing, edges: act.edge === 'left' ? [first + fewer, last] : [first, last - fewer] };
    }
    case 'carriage':
      return { ...standing, carriage: act.set };
    case 'selecting':
      return { ...standing, isSelecting: act.on };
    case 'end-needles':
      return { ...standing, hasEndNeedles: act.on };
    case 'tension':
      return { ...standing, tension: tensionOf(act) };
    case 'first-needles':
      return { ...standing, patternFrom: act.row };
    case 'hang-hem':
      return { ...standing, isHung: true };
    default:
      return standing;
  }
}

/** A tension as one text, to be compared. */
export function tensionOf({ part, section, text }: Extract<ActJson, { act: 'tension' }>): string {
  return [part, section, text].join(' ');
}

type Shaping = Extract<ActJson, { act: 'increase' | 'decrease' | 'cast-off' | 'cast-on-more' }>;

function countOf({ act, needles }: Shaping): number {
  if (act === 'increase' || act === 'decrease') return needles.length;
  const [first, last] = needles as [string, string];
  return positionOf(last) - positionOf(first) + 1;
}

/** The same shaping at the other edge. */
export function atOtherEdge(act: Shaping, { edges: [first, last] }: Standing): Shaping {
  const count = countOf(act);
  const edge = act.edge === 'left' ? 'right' : 'left';
  const isMore = act.act === 'increase' || act.act === 'cast-on-more';
  const at = edge === 'left' ? (isMore ? first - count : first) : isMore ? last + 1 : last - count + 1;
  const needles = each([at, at + count - 1]).map(labelOf);
  if (act.act === 'increase' || act.act === 'decrease') return { ...act, edge, needles };
  return { ...act, edge, needles: [needles[0] as string, needles.at(-1) as string] };
}
