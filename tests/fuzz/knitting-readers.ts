/** The readers of what is kept of pieces on the needles. */
import assert from 'node:assert/strict';
import { beginningLine, entryLine, journalFromText, type KnittingEvent } from '@shared/journal/index.ts';
import {
  digestOf,
  followJournal,
  knittingOrderOf,
  lastReading,
  orderFromText,
  orderToText,
  stopsOf,
  bedAt,
} from '@shared/knitting/index.ts';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject } from '@shared/project/index.ts';
import type { Dice } from './random.ts';
import { ofText, REFUSED, type Reader } from './reader.ts';
import { changedJson } from './texts.ts';

function sampleOrder(): string {
  const piece = pieceIn(projectAt(sampleProject()));
  const plan = makePlan(piece);
  const running = runningOrderOf(piece, plan);
  assert(running.isKnittable);
  return orderToText(knittingOrderOf(piece, plan, running.order));
}

const ORDER = sampleOrder();
const named = { id: 'one', name: 'one' };
const BEGUN = {
  of: { project: { name: 'Skerry', path: '/a.walewright' }, piece: named, size: named, copy: 2 },
  digest: digestOf(ORDER),
  order: ORDER,
};
const EVENTS: readonly KnittingEvent[] = [
  { kind: 'ticked', reading: 0, act: 1 },
  { kind: 'row-done', reading: 0 },
  { kind: 'go-to', reading: 1, to: 60 },
  { kind: 'carriage-seen', reading: 60, at: 'right' },
  { kind: 'row-done', reading: 60 },
  { kind: 'ripped-back', reading: 61, to: 40 },
  { kind: 'order-taken', reading: 40, digest: BEGUN.digest, order: ORDER },
];

/** A journal with the checks that its lines ask for, each line as `change` makes it. */
function written(change: <T>(value: T, line: number) => T): string {
  const first = beginningLine(change(BEGUN, 0));
  let { check } = first;
  return EVENTS.reduce((text, event, index) => {
    const entry = { number: index + 1, id: `entry-${index}`, at: '2026-01-02T03:04:05.678Z', event };
    const next = entryLine(change(entry, index + 1), check);
    check = next.check;
    return text + next.line;
  }, first.line);
}

/** One line is spoiled. */
function changedLines(_: string, dice: Dice): string {
  const spoiled = dice.below(EVENTS.length + 1);
  return written(<T>(value: T, line: number): T =>
    line === spoiled ? (JSON.parse(jsonOr(changedJson(JSON.stringify(value), dice), value)) as T) : value,
  );
}

/** The text where it is JSON of an object still, else the value as it was. */
function jsonOr(text: string, value: unknown): string {
  try {
    const read: unknown = JSON.parse(text);
    if (typeof read === 'object' && read !== null && !Array.isArray(read)) return text;
  } catch {
    // A line is JSON whatever else it is.
  }
  return JSON.stringify(value);
}

const order = (text: string): void => {
  const read = orderFromText(text);
  const last = lastReading(read);
  assert.equal(stopsOf(read).length, last + 1);
  assert.deepEqual(orderFromText(orderToText(read)), read);
  if (last < 1000) bedAt(read, last);
};

const journal = (text: string): unknown => {
  const read = journalFromText(text);
  if (read === null) return REFUSED;
  const { place, knitting, entries } = followJournal(read);
  assert(place.reading >= 0 && place.reading <= lastReading(knitting));
  assert(entries <= read.entries.length && read.entries.length <= EVENTS.length + 1);
  return place;
};

export const KNITTING_READERS: readonly Reader[] = [
  ofText('knitting-order', [ORDER], order, changedJson),
  ofText('knitting-journal', [written((value) => value)], journal, changedLines),
];
