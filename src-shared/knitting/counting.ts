/**
 * The count of a window, which goes on while nothing can be written: what is on
 * the disk, and behind it what waits to be. Another window may have counted
 * meanwhile; what is on the disk stands, and what waits follows it if it can.
 */
import type { Entry, Journal, KnittingEvent } from '../journal/index.ts';
import { outcome, type Problem } from '../problem/index.ts';
import { afterEvent, followJournal, type Progress } from './progress.ts';

/** An event with the id by which it is known when it is sent again. */
export interface Sent {
  readonly id: string;
  readonly event: KnittingEvent;
}

export interface Counting {
  /** How many entries are known to be on the disk, and where the knitter is after them. */
  readonly entries: number;
  readonly kept: Progress;
  /** What is not known to be on the disk, in its order. */
  readonly waiting: readonly Sent[];
  /** Where the knitter is after that as well. */
  readonly progress: Progress;
}

/** The count as a journal has it. Throws `order-unreadable`. */
export function countingFrom(journal: Journal): Counting {
  const { knitting, place, entries } = followJournal(journal);
  const progress = { knitting, place };
  return { entries, kept: progress, waiting: [], progress };
}

/** With an event more, which waits to be written. Throws what `afterEvent` refuses it with. */
export function countedOn(counting: Counting, sent: Sent): Counting {
  const progress = afterEvent(counting.progress, sent.event);
  return { ...counting, waiting: [...counting.waiting, sent], progress };
}

/** What was told of the journal behind the entries that were known, and what of the waiting cannot follow it. */
export interface Told {
  readonly counting: Counting;
  /** Events that are let go, each with the reason. */
  readonly dropped: readonly { readonly sent: Sent; readonly problem: Problem }[];
}

/** With entries that are on the disk behind those that were known: those of this window do not wait any more. */
export function toldOf(counting: Counting, entries: readonly Entry[]): Told {
  const kept = entries.reduce((progress, { event }) => afterEvent(progress, event), counting.kept);
  const written = new Set(entries.map(({ id }) => id));
  const waiting: Sent[] = [];
  const dropped: { sent: Sent; problem: Problem }[] = [];
  let progress = kept;
  for (const sent of counting.waiting) {
    if (written.has(sent.id)) continue;
    const after = outcome(() => afterEvent(progress, sent.event));
    if (after.ok) {
      progress = after.value;
      waiting.push(sent);
    } else dropped.push({ sent, problem: after.problem });
  }
  return { counting: { entries: counting.entries + entries.length, kept, waiting, progress }, dropped };
}
