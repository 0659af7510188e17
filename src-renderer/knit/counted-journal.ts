/** A count as a journal has it, with what a window keeps of its entries besides: when rows were counted, and which entry is the last. */
import type { Entry, Journal } from '@shared/journal/index.ts';
import { countingFrom, digestOf, orderToText, type Counting, type KnittingOrder } from '@shared/knitting/index.ts';
import type { Problem } from '@shared/problem/index.ts';

export interface JournalCount {
  readonly counting: Counting;
  /** As {@link timesOf} has them. */
  readonly times: readonly number[];
  /** The id of the last entry that could be followed; null where there is none. */
  readonly lastId: string | null;
  readonly damage: Damage | null;
}

/** From which line on a journal is not believed, from 1, and how many entries stand before it. */
export interface Damage {
  readonly line: number;
  readonly entries: number;
}

/** Throws `order-unreadable`. */
export function countOf(journal: Journal): JournalCount {
  const counting = countingFrom(journal);
  const lastId = journal.entries[counting.entries - 1]?.id ?? null;
  const isWhole = journal.rest.kind !== 'damaged' && counting.entries === journal.entries.length;
  const damage = isWhole ? null : { line: counting.entries + 2, entries: counting.entries };
  return { counting, times: timesOf(journal.entries), lastId, damage };
}

/** More than a pace is told from, and a rest is proposed by. */
const MOST_TIMES = 1000;

/** When the last rows were counted, in ms, ascending; `before`: of the entries before these. */
export function timesOf(entries: readonly Entry[], before: readonly number[] = []): readonly number[] {
  const times = entries.filter(({ event }) => event.kind === 'row-done').map(({ at }) => Date.parse(at));
  return [...before, ...times].slice(-MOST_TIMES);
}

/** What is wrong with a journal itself, and stays so. */
export const UNREADABLE: ReadonlySet<Problem['code']> = new Set<Problem['code']>([
  'journal-not-ours',
  'journal-newer',
  'journal-damaged',
  'order-unreadable',
]);

/** The digest of a design that is another than the order `knitting`; null where it is the same, or none. */
export function changedDigest(knitting: KnittingOrder, design: KnittingOrder | null): string | null {
  if (design === null || knitting === design || textOf(knitting) === textOf(design)) return null;
  let digest = digests.get(design);
  if (digest === undefined) digests.set(design, (digest = digestOf(textOf(design))));
  return digest;
}

/* Looked up for each row that is shown. */
const texts = new WeakMap<KnittingOrder, string>();
const digests = new WeakMap<KnittingOrder, string>();
function textOf(knitting: KnittingOrder): string {
  let text = texts.get(knitting);
  if (text === undefined) texts.set(knitting, (text = orderToText(knitting)));
  return text;
}
