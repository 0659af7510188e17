/** What a knitter can have done, and what not. */
import { describe, expect, it } from 'vitest';
import type { KnittingEvent } from '@shared/journal/index.ts';
import {
  afterEvent,
  AT_THE_START,
  digestOf,
  orderToText,
  readingTyped,
  type KnittingPlace,
  type Progress,
} from '@shared/knitting/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { knittingOf, trial } from './knitting.ts';

const knitting = knittingOf(trial());
const begun: Progress = { knitting, place: AT_THE_START };

/** After events, each with the reading that it finds left out. */
type Told = KnittingEvent extends infer E ? (E extends { reading: number } ? Omit<E, 'reading'> : never) : never;
const after = (progress: Progress, ...events: readonly Told[]): Progress =>
  events.reduce((now, event) => afterEvent(now, { ...event, reading: now.place.reading } as KnittingEvent), progress);
const rows = (count: number): Told[] => Array.from({ length: count }, () => ({ kind: 'row-done' }));
const placeAfter = (...events: readonly Told[]): KnittingPlace => after(begun, ...events).place;
const codeOf = (...events: readonly Told[]): string => {
  const result = outcome(() => after(begun, ...events));
  return result.ok ? 'done' : result.problem.code;
};

describe('a knitter', () => {
  it('counts row by row, and back again', () => {
    expect(placeAfter(...rows(4))).toEqual({ phase: 'knitting', reading: 4, ticks: [] });
    expect(placeAfter(...rows(4), { kind: 'back' })).toEqual(placeAfter(...rows(3)));
  });

  it('ticks off what is done before a row, which is kept for it', () => {
    const ticked = placeAfter(...rows(3), { kind: 'ticked', act: 1 }, { kind: 'ticked', act: 0 });
    expect(ticked.ticks).toEqual([{ reading: 3, acts: [0, 1] }]);
    expect(placeAfter(...rows(3), { kind: 'ticked', act: 1 }, { kind: 'unticked', act: 1 }).ticks).toEqual([]);
    // Back on a row that is not knitted after all, what was ticked off for it is ticked still; above it nothing is.
    const back = placeAfter(
      ...rows(3),
      { kind: 'ticked', act: 0 },
      ...rows(1),
      { kind: 'ticked', act: 2 },
      { kind: 'back' },
    );
    expect(back.ticks).toEqual([{ reading: 3, acts: [0] }]);
  });

  it('is asked for the carriage’s side after each return, and counts no row before', () => {
    for (const away of [
      { kind: 'go-to', to: 5 },
      { kind: 'go-to', to: 3 },
      { kind: 'ripped-back', to: 3 },
    ] as const) {
      expect(placeAfter(...rows(5), away).phase).toBe('returning');
      expect(codeOf(...rows(5), away, { kind: 'row-done' })).toBe('carriage-not-seen');
    }
    const back = [...rows(5), { kind: 'ripped-back', to: 3 }] as const;
    expect(codeOf(...back, { kind: 'carriage-seen', at: 'right' })).toBe('carriage-elsewhere');
    expect(placeAfter(...back, { kind: 'carriage-seen', at: 'left' })).toEqual(placeAfter(...rows(3)));
  });

  it('has to do again what was ticked off where it is ripped back to', () => {
    const ripped = placeAfter(...rows(3), { kind: 'ticked', act: 0 }, ...rows(2), { kind: 'ripped-back', to: 3 });
    expect(ripped.ticks).toEqual([]);
    expect(ripped).toMatchObject({ ripped: { from: 5, acts: [] } });
  });

  it('rips further without losing sight of where it began', () => {
    const twice = placeAfter(
      ...rows(6),
      { kind: 'ticked', act: 1 },
      { kind: 'ripped-back', to: 5 },
      { kind: 'ripped-back', to: 2 },
    );
    expect(twice).toMatchObject({ phase: 'returning', reading: 2, ripped: { from: 6, acts: [1] } });
  });

  it('keeps what was ticked off where the counter is put right alone', () => {
    const put = placeAfter(...rows(3), { kind: 'ticked', act: 0 }, ...rows(2), { kind: 'go-to', to: 3 });
    expect(put.ticks).toEqual([{ reading: 3, acts: [0] }]);
  });

  it('takes the piece off at the end, and may have erred in that', () => {
    const off = [...rows(12), { kind: 'finished' }] as const;
    expect(placeAfter(...off).phase).toBe('finished');
    expect(codeOf(...off, { kind: 'row-done' })).toBe('piece-finished');
    expect(placeAfter(...off, { kind: 'back' })).toEqual(placeAfter(...rows(12)));
  });

  it.each<[string, readonly Told[]]>([
    ['rows-all-knitted', rows(13)],
    ['no-row-knitted', [{ kind: 'back' }]],
    ['reading-unknown', [{ kind: 'go-to', to: 13 }]],
    ['not-ripped-back', [...rows(3), { kind: 'ripped-back', to: 3 }]],
    ['not-at-end', [...rows(11), { kind: 'finished' }]],
    ['act-unknown', [...rows(3), { kind: 'ticked', act: 3 }]],
    ['act-unknown', [...rows(1), { kind: 'unticked', act: 0 }]],
  ])('is refused with %s', (code, events) => {
    expect(codeOf(...events)).toBe(code);
  });

  it('is told where somebody else has counted meanwhile', () => {
    const result = outcome(() => afterEvent(after(begun, ...rows(4)), { kind: 'row-done', reading: 3 }));
    expect(result).toMatchObject({ problem: { code: 'counted-elsewhere', facts: { thought: 3, reads: 4 } } });
  });
});

describe('another order', () => {
  const taken = (project = trial({ rows: 10 })): Told => {
    const order = orderToText(knittingOf(project));
    return { kind: 'order-taken', order, digest: digestOf(order) };
  };

  it('is followed from there on, once the carriage is seen', () => {
    const progress = after(begun, ...rows(4), { kind: 'ticked', act: 0 }, taken());
    expect(progress.knitting).toEqual(knittingOf(trial({ rows: 10 })));
    expect(progress.place).toMatchObject({ phase: 'returning', reading: 4, ticks: [], ripped: null });
  });

  it('is put right against the one before it until the carriage is seen, wherever the count goes meanwhile', () => {
    const { place } = after(begun, ...rows(4), taken());
    expect(place).toMatchObject({ taken: { before: begun.knitting, reading: 4 } });
    expect(after(begun, ...rows(4), taken(), { kind: 'ripped-back', to: 2 }).place).toMatchObject({
      reading: 2,
      ripped: { from: 4 },
      taken: { before: begun.knitting, reading: 4 },
    });
    const seen = after(begun, ...rows(4), taken(), { kind: 'carriage-seen', at: 'right' }, { kind: 'go-to', to: 3 });
    expect(seen.place).toMatchObject({ phase: 'returning', taken: null });
  });

  it('may end where the count is', () => {
    expect(after(begun, ...rows(10), taken()).place).toMatchObject({ phase: 'returning', reading: 10 });
  });

  it.each<[string, readonly Told[]]>([
    ['order-too-short', [...rows(11), taken()]],
    ['order-unreadable', [{ kind: 'order-taken', order: '{}', digest: digestOf('{}') }]],
    ['piece-finished', [...rows(12), { kind: 'finished' }, taken()]],
  ])('is refused with %s', (code, events) => {
    expect(codeOf(...events)).toBe(code);
  });
});

describe('a reading that is typed', () => {
  it.each([
    ['0', 0],
    [' 12 ', 12],
    ['007', 7],
  ])('%j is %i', (text, reading) => expect(readingTyped(knitting, text)).toBe(reading));

  it.each(['13', '-1', '', 'row 5', '5.5', '1e1', '٣', '99999999999', 'NaN'])('%j is none', (text) => {
    const result = outcome(() => readingTyped(knitting, text));
    expect(result).toMatchObject({ problem: { code: 'reading-unknown', facts: { text: text.trim(), last: 12 } } });
  });
});
