/** A knitter who does anything at all, at random, on random pieces. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beginningLine, entryLine, journalFromText, type KnittingEvent } from '@shared/journal/index.ts';
import {
  afterEvent,
  AT_THE_START,
  bedAt,
  digestOf,
  followJournal,
  knittingOrderOf,
  lastReading,
  orderFromText,
  orderToText,
  paritySide,
  puttingBack,
  rippingSteps,
  stopsOf,
  tickedAt,
  type KnittingOrder,
  type Progress,
  type PutBack,
} from '@shared/knitting/index.ts';
import { settingsAfter, settingsAt } from '@shared/knitting/settings.ts';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { anyKnittable } from '../knit/projects.ts';

/** Orders of random pieces, made once: making them takes longer than what is asked of them. */
const orders: readonly KnittingOrder[] = fc.sample(anyKnittable, { seed: 4, numRuns: 90 }).flatMap((project) => {
  const piece = pieceIn(project);
  const plan = outcome(() => makePlan(piece));
  const running = plan.ok ? runningOrderOf(piece, plan.value) : null;
  return plan.ok && running?.isKnittable ? [knittingOrderOf(piece, plan.value, running.order)] : [];
});
const anyOrder = fc.constantFrom(...orders);

/** What a knitter may try, with numbers that need not fit the piece. */
type Tried = (progress: Progress) => KnittingEvent;
const near = fc.integer({ min: -1, max: 120 });
const tried: fc.Arbitrary<Tried> = fc.oneof(
  { weight: 6, arbitrary: fc.constant<Tried>(({ place: { reading } }) => ({ kind: 'row-done', reading })) },
  fc.constant<Tried>(({ place: { reading } }) => ({ kind: 'back', reading })),
  fc.constant<Tried>(({ place: { reading } }) => ({ kind: 'finished', reading })),
  near.map<Tried>((to) => ({ place: { reading } }) => ({ kind: 'go-to', reading, to: Math.max(0, to) })),
  near.map<Tried>((to) => ({ place: { reading } }) => ({ kind: 'ripped-back', reading, to: Math.max(0, to) })),
  fc.nat(6).map<Tried>((act) => ({ place: { reading } }) => ({ kind: 'ticked', reading, act })),
  fc.nat(6).map<Tried>((act) => ({ place: { reading } }) => ({ kind: 'unticked', reading, act })),
  {
    weight: 3,
    arbitrary: fc
      .constantFrom('left' as const, 'right' as const)
      .map<Tried>((at) => ({ place: { reading } }) => ({ kind: 'carriage-seen', reading, at })),
  },
  near.map<Tried>((reading) => () => ({ kind: 'row-done', reading: Math.max(0, reading) })),
);
const trials = fc.array(tried, { minLength: 30, maxLength: 60 });

/** Each event that could be, with the progress after it. */
function knitted(knitting: KnittingOrder, all: readonly Tried[]): { event: KnittingEvent; progress: Progress }[] {
  const done: { event: KnittingEvent; progress: Progress }[] = [];
  let progress: Progress = { knitting, place: AT_THE_START };
  for (const one of all) {
    const event = one(progress);
    const after = outcome(() => afterEvent(progress, event));
    if (!after.ok) {
      expect(after.problem.code).not.toBe('unexpected');
      continue;
    }
    progress = after.value;
    done.push({ event, progress });
  }
  return done;
}

it('has orders enough to ask', () => expect(orders.length).toBeGreaterThan(40));

describe('events at random', () => {
  it('never leave the order', () => {
    let counted = 0;
    fc.assert(
      fc.property(anyOrder, trials, (knitting, all) => {
        const last = lastReading(knitting);
        for (const { progress } of knitted(knitting, all)) {
          const { reading, ticks, phase } = progress.place;
          expect(reading).toBeGreaterThanOrEqual(0);
          expect(reading).toBeLessThanOrEqual(last);
          for (const { reading: at, acts } of ticks) {
            expect(at).toBeLessThanOrEqual(reading);
            expect(acts.length).toBeGreaterThan(0);
            expect(acts.every((act) => act < (stopsOf(knitting)[at]?.acts.length ?? 0))).toBe(true);
          }
          if (phase === 'finished') expect(reading).toBe(last);
          counted++;
        }
      }),
      { numRuns: 60, seed: 5 },
    );
    expect(counted).toBeGreaterThan(500);
  });

  it('back after a row that is done is as if it had not been', () => {
    let undone = 0;
    fc.assert(
      fc.property(anyOrder, trials, (knitting, all) => {
        for (const { progress } of knitted(knitting, all)) {
          const { reading } = progress.place;
          const done = outcome(() => afterEvent(progress, { kind: 'row-done', reading }));
          if (!done.ok) continue;
          expect(afterEvent(done.value, { kind: 'back', reading: reading + 1 })).toEqual(progress);
          undone++;
        }
      }),
      { numRuns: 40, seed: 6 },
    );
    expect(undone).toBeGreaterThan(200);
  });

  it('a journal cut at any letter gives the place after its last whole line', () => {
    fc.assert(
      fc.property(anyOrder, trials, fc.double({ min: 0, max: 1, noNaN: true }), (knitting, all, where) => {
        const order = orderToText(knitting);
        const of = {
          project: { name: 'x', path: null },
          piece: { id: 'p', name: '' },
          size: { id: 's', name: '' },
          copy: 1,
        };
        const first = beginningLine({ of, digest: digestOf(order), order });
        const lines = [first.line];
        const places = [AT_THE_START];
        let check = first.check;
        for (const [index, { event, progress }] of knitted(knitting, all).entries()) {
          const entry = { number: index + 1, id: 'of-a-window', at: '2026-01-02T03:04:05.678Z', event };
          const next = entryLine(entry, check);
          lines.push(next.line);
          places.push(progress.place);
          check = next.check;
        }
        const text = lines.join('');
        const cut = Math.round(first.line.length + where * (text.length - first.line.length));
        const journal = journalFromText(text.slice(0, cut));
        if (!journal) throw new Error('The first line is whole');
        const followed = followJournal(journal);
        expect(followed.refused).toBeNull();
        expect(followed.place).toEqual(places[text.slice(0, cut).split('\n').length - 2]);
        expect(followed.knitting).toEqual(knitting);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('random orders', () => {
  it('ripped back and knitted again give the same stops, with nothing ticked off', () => {
    fc.assert(
      fc.property(anyOrder, fc.nat(400), fc.nat(400), (knitting, one, other) => {
        const last = lastReading(knitting);
        const [to, from] = [one % last, (one % last) + 1 + (other % (last - (one % last)))];
        const knitTo = (progress: Progress, reading: number): Progress => {
          let now = progress;
          while (now.place.reading < reading) {
            const at = now.place.reading;
            for (const act of (stopsOf(knitting)[at]?.acts ?? []).keys())
              now = afterEvent(now, { kind: 'ticked', reading: at, act });
            now = afterEvent(now, { kind: 'row-done', reading: at });
          }
          return now;
        };
        const first = knitTo({ knitting, place: AT_THE_START }, from);
        const ripped = afterEvent(first, { kind: 'ripped-back', reading: from, to });
        expect(tickedAt(ripped.place)).toEqual([]);
        const seen = afterEvent(ripped, { kind: 'carriage-seen', reading: to, at: paritySide(knitting, to) });
        expect(seen).toEqual(knitTo({ knitting, place: AT_THE_START }, to));
        expect(knitTo(seen, from)).toEqual(first);
      }),
      { numRuns: 40, seed: 8 },
    );
  });

  it('ask of whoever rips back what brings the machine to where it was', () => {
    fc.assert(
      fc.property(anyOrder, fc.nat(400), fc.nat(400), (knitting, one, other) => {
        const last = lastReading(knitting);
        const [to, from] = [one % last, (one % last) + 1 + (other % (last - (one % last)))];
        const stop = stopsOf(knitting)[to];
        const was = settingsAt(knitting.order, to);
        const then = settingsAfter(was, stop?.acts.map(({ act }) => act) ?? [], stop?.carriageAt ?? 'left');
        const is = settingsAt(knitting.order, from);
        let [carriage, isSelecting, hasWeights] = [is.carriage, is.isSelecting, is.hasWeights];
        const feeders = { ...is.feeders };
        for (const put of puttingBack(knitting, from, to)) {
          if (put.kind === 'carriage') carriage = put.set;
          if (put.kind === 'selecting') isSelecting = put.isOn;
          if (put.kind === 'weights') hasWeights = put.do === 'hang';
          if (put.kind === 'yarn-out') feeders[put.feeder] = null;
          if (put.kind === 'yarn-in') {
            // Nothing is threaded where another yarn is.
            expect(feeders[put.feeder]).toBeNull();
            feeders[put.feeder] = { yarn: put.yarn, ball: put.ball };
          }
          if (put.kind === 'carriage-to') expect(put.side).toBe(paritySide(knitting, to));
        }
        expect([was.carriage, then.carriage]).toContain(carriage);
        expect([was.isSelecting, then.isSelecting]).toContain(isSelecting);
        expect([was.hasWeights, then.hasWeights]).toContain(hasWeights);
        for (const feeder of [1, 2] as const)
          expect([was.feeders[feeder], then.feeders[feeder]]).toContainEqual(feeders[feeder]);
      }),
      { numRuns: 150, seed: 9 },
    );
  });

  it('is put back the same whether acts at the reading that is left were ticked off or only done', () => {
    fc.assert(
      fc.property(anyOrder, fc.nat(400), fc.nat(400), fc.nat(63), (knitting, one, other, which) => {
        const last = lastReading(knitting);
        const [to, from] = [one % last, (one % last) + 1 + (other % (last - (one % last)))];
        const acts = stopsOf(knitting)[from]?.acts ?? [];
        const ticked = [...acts.keys()].filter((act) => (which >> (act % 6)) & 1);
        const texts = (puts: readonly PutBack[]): string[] => puts.map((put) => JSON.stringify(put));
        const steps = rippingSteps(knitting, from, to, ticked);
        const sure = steps.filter(({ ifBegun }) => !ifBegun).map(({ put }) => put);
        expect(texts(sure)).toEqual(texts(puttingBack(knitting, from, to, ticked)));
        // All that is needed where every act was done is told, in its order, with a condition or without.
        const told = texts(steps.map(({ put }) => put));
        const needed = texts(puttingBack(knitting, from, to, [...acts.keys()]));
        expect(told.filter((text) => needed.includes(text))).toEqual(needed);
      }),
      { numRuns: 300, seed: 12 },
    );
  });

  it('hold while a row is knitted what their acts have brought about', () => {
    fc.assert(
      fc.property(anyOrder, (knitting) => {
        for (const { acts, row, carriageAt, counter } of stopsOf(knitting)) {
          if (!row) continue;
          const settings = settingsAfter(
            settingsAt(knitting.order, counter),
            acts.map(({ act }) => act),
            carriageAt,
          );
          expect(settings.carriage).toBe(row.carriage);
          expect(settings.isSelecting).toBe(row.isSelecting);
          expect([1, 2].map((feeder) => settings.feeders[feeder as 1 | 2]?.yarn ?? null)).toEqual([
            row.feeders[1],
            row.feeders[2],
          ]);
          const fed = [row.feeders[1], row.feeders[2]].filter((yarn) => yarn !== null);
          expect(
            row.selected.every(({ yarn }) => fed.includes(yarn) || row.laid.some((lay) => lay.yarn === yarn)),
          ).toBe(true);
          const bed = bedAt(knitting, counter).needles;
          expect(bed.filter(({ state }) => state !== 'out-of-work')).toHaveLength(row.stitches);
          const forward = bed.filter(({ state }) => state === 'forward').length;
          expect(forward).toBe(knitting.chooses === 'ahead-unseen' ? 0 : row.selectedCount);
        }
      }),
      { numRuns: 40, seed: 10 },
    );
  });

  it('are the same again from their text', () => {
    fc.assert(
      fc.property(anyOrder, (knitting) => {
        expect(orderFromText(orderToText(knitting))).toEqual(knitting);
      }),
      { numRuns: 60, seed: 11 },
    );
  });
});
