/** What a knitter does, applied to where the knitter is. What cannot be is refused. */
import type { Journal, KnittingEvent } from '../journal/index.ts';
import { problemError, problemOf, type Problem } from '../problem/index.ts';
import type { KnittingOrder } from './model.ts';
import { orderFromText } from './order-file.ts';
import { AT_THE_START, ticksBelow, tickedAt, withTick, type KnittingPlace } from './place.ts';
import { paritySide } from './putting-back.ts';
import { lastReading, stopsOf } from './stops.ts';

/** A piece on the needles: the order that its knitter follows, as it was taken, and where the knitter is in it. */
export interface Progress {
  readonly knitting: KnittingOrder;
  readonly place: KnittingPlace;
}

/**
 * The progress after an event. Throws a problem of this folder where it cannot
 * be: `counted-elsewhere` for one that was thought to happen at another
 * reading, `rows-all-knitted`, `no-row-knitted`, `reading-unknown`,
 * `not-ripped-back`, `not-at-end`, `piece-finished`, `act-unknown`,
 * `carriage-not-seen`, `carriage-elsewhere`, `order-too-short` and
 * `order-unreadable`.
 */
export function afterEvent({ knitting, place }: Progress, event: KnittingEvent): Progress {
  if (event.reading !== place.reading) {
    throw problemError('counted-elsewhere', { thought: event.reading, reads: place.reading });
  }
  if (event.kind === 'order-taken') return takeOrder({ knitting, place }, orderFromText(event.order));
  return { knitting, place: placeAfter(knitting, place, event) };
}

type EventAtPlace = Exclude<KnittingEvent, { readonly kind: 'order-taken' }>;

function placeAfter(knitting: KnittingOrder, place: KnittingPlace, event: EventAtPlace): KnittingPlace {
  const { reading } = place;
  const last = lastReading(knitting);
  switch (event.kind) {
    case 'row-done':
      assertKnitting(place);
      if (reading === last) throw problemError('rows-all-knitted', { last });
      return { ...place, reading: reading + 1 };
    case 'back':
      if (place.phase === 'finished') return { phase: 'knitting', reading, ticks: place.ticks };
      if (reading === 0) throw problemError('no-row-knitted', {});
      return { ...place, reading: reading - 1, ticks: ticksBelow(place, reading) };
    case 'go-to':
      if (event.to > last) throw problemError('reading-unknown', { text: String(event.to), last });
      return { ...returningTo(place, event.to), ticks: ticksBelow(place, event.to + 1) };
    case 'ripped-back': {
      if (event.to >= reading) throw problemError('not-ripped-back', { to: event.to, reading });
      const before = place.phase === 'returning' ? place.ripped : null;
      const ripped = before ?? { from: reading, acts: tickedAt(place) };
      return { ...returningTo(place, event.to), ripped };
    }
    case 'ticked':
    case 'unticked':
      if (!stopsOf(knitting)[reading]?.acts[event.act]) throw problemError('act-unknown', { reading, act: event.act });
      return withTick(place, event.act, event.kind === 'ticked');
    case 'carriage-seen': {
      const expected = paritySide(knitting, reading);
      if (event.at !== expected) throw problemError('carriage-elsewhere', { reading, seen: event.at, expected });
      return place.phase === 'returning' ? { phase: 'knitting', reading, ticks: place.ticks } : place;
    }
    case 'finished':
      assertKnitting(place);
      if (reading !== last) throw problemError('not-at-end', { reading, last });
      return { phase: 'finished', reading, ticks: place.ticks };
  }
}

function assertKnitting({ phase, reading }: KnittingPlace): void {
  if (phase === 'finished') throw problemError('piece-finished', {});
  if (phase === 'returning') throw problemError('carriage-not-seen', { reading });
}

/** What is to be put right by an order that was taken stays so until it is said where the carriage stands. */
function returningTo(place: KnittingPlace, reading: number): Extract<KnittingPlace, { readonly phase: 'returning' }> {
  const taken = place.phase === 'returning' ? place.taken : null;
  return { phase: 'returning', reading, ticks: ticksBelow(place, reading), ripped: null, taken };
}

/** What was ticked off belongs to acts of the order before. */
function takeOrder({ knitting: before, place: { phase, reading } }: Progress, knitting: KnittingOrder): Progress {
  if (phase === 'finished') throw problemError('piece-finished', {});
  const last = lastReading(knitting);
  if (reading > last) throw problemError('order-too-short', { reading, last });
  return { knitting, place: { phase: 'returning', reading, ticks: [], ripped: null, taken: { before, reading } } };
}

/** What a journal tells, as far as it can be so. */
export interface Followed extends Progress {
  /** How many of its entries were followed, and why the one after them was not; null: all were. */
  readonly entries: number;
  readonly refused: Problem | null;
}

/**
 * Where the knitter is after all that a journal tells. From an event on that
 * cannot be, nothing is believed. Throws `order-unreadable` where what was
 * begun with is no order.
 */
export function followJournal({ begun, entries }: Journal): Followed {
  const knitting = orderFromText(begun.order);
  return followFurther({ knitting, place: AT_THE_START, entries: 0, refused: null }, entries);
}

/** The same of a journal that has grown: `entries` are all of it, and `followed` is after the first of them. */
export function followFurther(followed: Followed, entries: Journal['entries']): Followed {
  let progress: Progress = { knitting: followed.knitting, place: followed.place };
  for (const [index, { event }] of entries.entries()) {
    if (index < followed.entries) continue;
    try {
      progress = afterEvent(progress, event);
    } catch (thrown) {
      return { ...progress, entries: index, refused: problemOf(thrown) };
    }
  }
  return { ...progress, entries: entries.length, refused: null };
}

/** The reading that a person typed. Throws `reading-unknown` for what is none of this order. */
export function readingTyped(knitting: KnittingOrder, text: string): number {
  const last = lastReading(knitting);
  const reading = /^\d{1,9}$/.test(text.trim()) ? Number(text) : NaN;
  if (!(reading <= last)) throw problemError('reading-unknown', { text: text.trim(), last });
  return reading;
}
