/**
 * The running order one reading of the row counter at a time: what is done
 * there, the row that follows, how long it goes on like that, and what comes next.
 */
import { opposite, widthOf, type Run, type Side } from '../bed/index.ts';
import type { Act, ActOf, Holding, Stop, Stretch } from '../plan/index.ts';
import { needlesOfAct } from './act-needles.ts';
import type { KnittingOrder, StandingGroup, YarnRun } from './model.ts';

/** An act with the needles that it is done on. */
export interface ToDo {
  readonly act: Act;
  /** Left to right; empty where it is done on none. */
  readonly needles: readonly Run[];
}

/** The row that is knitted from a reading. */
export interface StopRow extends Holding {
  /** From 1; the counter reads it once it is knitted. */
  readonly row: number;
  /** How many needles are in work. */
  readonly stitches: number;
  /** The needles that take the second feeder's yarn, or yarn that is laid; left to right, none on a plain row. */
  readonly selected: readonly YarnRun[];
  readonly selectedCount: number;
  /** Balls laid by hand, in the order in which they are laid. */
  readonly laid: readonly ActOf<'lay'>[];
  readonly wraps: readonly ActOf<'wrap'>[];
  /** The groups that stand on this row. */
  readonly groups: readonly StandingGroup[];
}

/** How many rows, this one included, go on alike with nothing to do between them, and the reading after the last. */
export interface GoesOn {
  readonly rows: number;
  readonly to: number;
}

export interface KnittingStop {
  /** What the row counter reads. */
  readonly counter: number;
  readonly carriageAt: Side;
  /** The side to which the carriage goes with the row; null at the end. */
  readonly carriageTo: Side | null;
  /** Before the row, as hands do them. */
  readonly acts: readonly ToDo[];
  /** Null at the end. */
  readonly row: StopRow | null;
  readonly goesOn: GoesOn | null;
  /** The next reading at which there is something to do; null at the end. */
  readonly nextAt: number | null;
}

/** A stop for each reading, index by reading: from 0, where is cast on, to the last row, where the piece comes off. */
export type KnittingStops = readonly KnittingStop[];

const known = new WeakMap<KnittingOrder, KnittingStops>();

/** The stops of an order; the same order value gives the same value. */
export function stopsOf(knitting: KnittingOrder): KnittingStops {
  const stops = known.get(knitting) ?? makeStops(knitting);
  known.set(knitting, stops);
  return stops;
}

/** The reading at which the piece comes off the needles: the number of its rows. */
export function lastReading(knitting: KnittingOrder): number {
  return knitting.contrast.length;
}

function makeStops(knitting: KnittingOrder): KnittingStops {
  const { order } = knitting;
  const stops: KnittingStop[] = [];
  for (const [index, item] of order.entries()) {
    const next = order[index + 1];
    const to = item.kind === 'stretch' ? item.last : next?.kind === 'stretch' ? next.last : item.counter + 1;
    if (item.kind === 'stop') {
      const isEnd = item.row === null;
      stops.push(stopAt(knitting, item, item.counter, item.carriageAt, item.acts, isEnd ? null : to));
      continue;
    }
    let carriageAt = item.carriageAt;
    for (let row = item.first; row <= item.last; row++) {
      stops.push(stopAt(knitting, item, row - 1, carriageAt, [], to));
      carriageAt = opposite(carriageAt);
    }
  }
  return stops;
}

/** `to`: the next reading with something to do; null at the end. */
function stopAt(
  knitting: KnittingOrder,
  item: Stop | Stretch,
  counter: number,
  carriageAt: Side,
  acts: readonly Act[],
  to: number | null,
): KnittingStop {
  return {
    counter,
    carriageAt,
    carriageTo: to === null ? null : opposite(carriageAt),
    acts: acts.map((act) => ({ act, needles: needlesOfAct(act) })),
    row: to === null ? null : rowOf(knitting, item, counter + 1, acts),
    goesOn: to === null ? null : { rows: to - counter, to },
    nextAt: to,
  };
}

function rowOf(
  { contrast, groups }: KnittingOrder,
  { needles, carriage, isSelecting, feeders }: Holding,
  row: number,
  acts: readonly Act[],
): StopRow {
  const selected = carriage === 'pattern' ? (contrast[row - 1] as readonly YarnRun[]) : [];
  return {
    row,
    needles,
    carriage,
    isSelecting,
    feeders,
    stitches: widthOf(needles),
    selected,
    selectedCount: selected.reduce((count, run) => count + widthOf(run), 0),
    laid: acts.filter((act) => act.kind === 'lay'),
    wraps: acts.filter((act) => act.kind === 'wrap'),
    groups: groups.filter(({ firstRow, lastRow }) => firstRow <= row && row <= lastRow),
  };
}
