/** A count as a journal has it, with what a window keeps of its entries besides: when rows were counted, and which entry is the last. */
import type { Entry, Journal } from '@shared/journal/index.ts';
import { countingFrom, type Counting } from '@shared/knitting/index.ts';

export interface JournalCount {
  readonly counting: Counting;
  /** As {@link timesOf} has them. */
  readonly times: readonly number[];
  /** The id of the last entry that could be followed; null where there is none. */
  readonly lastId: string | null;
}

/** Throws `order-unreadable`. */
export function countOf(journal: Journal): JournalCount {
  const counting = countingFrom(journal);
  const lastId = journal.entries[counting.entries - 1]?.id ?? null;
  return { counting, times: timesOf(journal.entries), lastId };
}

/** More than a pace is told from, and a rest is proposed by. */
const MOST_TIMES = 1000;

/** When the last rows were counted, in ms, ascending; `before`: of the entries before these. */
export function timesOf(entries: readonly Entry[], before: readonly number[] = []): readonly number[] {
  const times = entries.filter(({ event }) => event.kind === 'row-done').map(({ at }) => Date.parse(at));
  return [...before, ...times].slice(-MOST_TIMES);
}
