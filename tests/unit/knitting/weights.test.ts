/** When weights are looked at: each 30th row after they were hung or moved. */
import { expect, it } from 'vitest';
import { lastReading, stopsOf, weightsDue } from '@shared/knitting/index.ts';
import { START_MACHINE } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { knittingOf, sample, trial } from './knitting.ts';

it('is each 30th row after they were hung or moved, and at no other', () => {
  const knitting = knittingOf(sample());
  const readings = Array.from({ length: lastReading(knitting) + 1 }, (_, reading) => reading);
  const done = readings.filter((at) => stopsOf(knitting)[at]?.acts.some(({ act }) => act.kind === 'weights'));
  // Hung at the cast-on, moved up once at least on 35 cm, off at the end.
  expect(done.length).toBeGreaterThanOrEqual(3);
  const due = readings.filter((at) => weightsDue(knitting, at) !== null);
  const expected = readings.filter((at) => {
    const last = done.filter((one) => one <= at).at(-1) as number;
    const next = done.find((one) => one > at) as number;
    return at > last && (at - last) % 30 === 0 && next - at > 5;
  });
  expect(due).toEqual(expected);
  expect(due.length).toBeGreaterThanOrEqual(2);
  // Counted from the last time that it was told.
  expect(new Set(due.map((at) => weightsDue(knitting, at)))).toEqual(new Set([30]));
});

it('is never where none hang', () => {
  const knitting = knittingOf(settled(trial({ rows: 90 }), { machine: { ...START_MACHINE, weights: false } }));
  for (let reading = 0; reading <= lastReading(knitting); reading++) expect(weightsDue(knitting, reading)).toBeNull();
});
