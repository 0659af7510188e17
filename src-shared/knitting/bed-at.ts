/** The bed as it has to look at a stop, once all that is done before the row is done. */
import type { Run, Slot } from '../bed/index.ts';
import type { BedNeedle, KnittingOrder, StandingGroup, YarnRun } from './model.ts';
import type { KnittingPlace } from './place.ts';
import { lastReading, stopsOf } from './stops.ts';

export interface BedAt {
  /** All needles that the piece takes on any of its rows, left to right. */
  readonly needles: readonly BedNeedle[];
  /** To be bracketed. */
  readonly groups: readonly StandingGroup[];
  /**
   * False where the machine chooses needles that do not stand forward: those of
   * a pattern row are working ones here, and their yarn alone tells them apart.
   */
  readonly showsForward: boolean;
}

/**
 * Needle by needle at a reading. At the last one the needles hold the stitches
 * that are to come off. No needle is ever held: nothing in a running order
 * knits a part of a row. Throws `RangeError` for a reading beyond the order.
 */
export function bedAt(knitting: KnittingOrder, reading: number): BedAt {
  const stop = stopsOf(knitting)[reading];
  if (!stop) throw new RangeError(`The order has readings 0 to ${lastReading(knitting)}, not ${reading}`);
  const { row } = stop;
  const inWork = row?.needles ?? (knitting.order.at(-1) as { readonly needles: Run }).needles;
  const showsForward = knitting.chooses !== 'ahead-unseen';
  const wrapped = new Set(row?.wraps.map(({ needle }) => needle));
  const feeder = row?.feeders[1] ?? null;
  const needles: BedNeedle[] = [];
  const { first, last } = reachOf(knitting);
  for (let at: number = first; at <= last; at++) {
    const needle = at as Slot;
    const selected = row && runWith(row.selected, needle);
    const isInWork = inWork.first <= needle && needle <= inWork.last;
    needles.push({
      needle,
      state: !isInWork ? 'out-of-work' : selected && showsForward ? 'forward' : 'working',
      isWrapped: wrapped.has(needle),
      yarn: isInWork ? (selected?.yarn ?? feeder) : null,
    });
  }
  return { needles, groups: row?.groups ?? [], showsForward };
}

/** The bed of a knitter who is at a place: of one whose piece came off the needles it is empty. */
export function bedOf(knitting: KnittingOrder, { phase, reading }: KnittingPlace): BedAt {
  const bed = bedAt(knitting, reading);
  if (phase !== 'finished') return bed;
  return { ...bed, needles: bed.needles.map(({ needle }) => emptied(needle)) };
}

function emptied(needle: Slot): BedNeedle {
  return { needle, state: 'out-of-work', isWrapped: false, yarn: null };
}

/** The needles that the piece takes, from the outermost left to the outermost right on any row. */
export function reachOf({ order }: KnittingOrder): Run {
  let [first, last] = [Infinity, -Infinity];
  for (const { needles } of order) {
    first = Math.min(first, needles.first);
    last = Math.max(last, needles.last);
  }
  return { first: first as Slot, last: last as Slot };
}

function runWith(runs: readonly YarnRun[], needle: Slot): YarnRun | undefined {
  return runs.find((run) => run.first <= needle && needle <= run.last);
}
