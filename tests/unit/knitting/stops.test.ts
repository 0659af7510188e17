/** The running order one reading at a time, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { lastReading, needlesOfAct, stopsOf } from '@shared/knitting/index.ts';
import { knittingOf, run, sample, trial } from './knitting.ts';

describe('the stops of a small piece', () => {
  const knitting = knittingOf(trial());
  const stops = stopsOf(knitting);

  it('are one for each reading, from casting on to casting off, the carriage going to and fro', () => {
    expect(stops.map(({ counter }) => counter)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(stops.map(({ carriageAt }) => carriageAt[0]).join('')).toBe('rlrlrlrlrlrlr');
    expect(stops.slice(0, -1).every(({ carriageAt, carriageTo }) => carriageTo !== carriageAt)).toBe(true);
    expect(stops.at(-1)).toMatchObject({ row: null, carriageTo: null, goesOn: null, nextAt: null });
    expect(lastReading(knitting)).toBe(12);
  });

  it.each([
    { reading: 0, rows: 3, to: 3 },
    { reading: 1, rows: 2, to: 3 },
    { reading: 2, rows: 1, to: 3 },
    { reading: 5, rows: 1, to: 6 },
    { reading: 6, rows: 5, to: 11 },
    { reading: 11, rows: 1, to: 12 },
  ])('count down from $reading: $rows more, to $to', ({ reading, rows, to }) => {
    expect(stops[reading]?.goesOn).toEqual({ rows, to });
    expect(stops[reading]?.nextAt).toBe(to);
  });

  it('tell of a pattern row what is chosen, fed and wrapped', () => {
    const row = stops[4]?.row;
    expect(row).toMatchObject({
      row: 5,
      carriage: 'pattern',
      stitches: 11,
      selectedCount: 3,
      feeders: { 1: 0, 2: 1 },
    });
    expect(row?.selected.map(run)).toEqual(['L1–R2']);
    expect(row?.wraps.map(({ needle }) => run({ first: needle, last: needle }))).toEqual(['R3']);
    expect(row?.groups.map(({ needles }) => run(needles))).toEqual(['L1–R2']);
    expect(stops[6]?.row).toMatchObject({ carriage: 'plain', selected: [], groups: [], feeders: { 1: 0, 2: null } });
  });

  it('tell what is done before a row in order, each with its needles', () => {
    expect(stops[3]?.acts.map(({ act, needles }) => `${act.kind} ${needles.map(run).join(' ')}`.trimEnd())).toEqual([
      'first-needles L1–R2',
      'end-needles',
      'selecting',
    ]);
    expect(stops[5]?.acts.map(({ act, needles }) => `${act.kind} ${needles.map(run).join(' ')}`)).toEqual([
      'check R1',
      'wrap L1',
    ]);
  });

  it('are the same value for the same order', () => {
    expect(stopsOf(knitting)).toBe(stops);
  });
});

it('tells a row of one yarn as plain, in that yarn', () => {
  const knitting = knittingOf(trial({ motif: ['X'], copies: [11] }));
  expect(stopsOf(knitting)[4]?.row).toMatchObject({ carriage: 'plain', selected: [], feeders: { 1: 1, 2: null } });
});

it('tells the balls that are laid by hand before their row', () => {
  const knitting = knittingOf(trial({ copies: [1, 1], stitches: 21, group: { hasOwnBall: true } }));
  const row = stopsOf(knitting)[4]?.row;
  expect(row?.laid.map(({ ball, needles }) => `${ball} ${needles.map(run).join(' ')}`)).toHaveLength(2);
  expect(row).toMatchObject({ feeders: { 2: null }, selectedCount: 6 });
});

it('names each needle of an act once, neighbours as one run', () => {
  const acts = stopsOf(knittingOf(sample())).flatMap((stop) => stop.acts);
  const shaping = acts.filter(({ act }) => act.kind === 'increase');
  expect(shaping.length).toBeGreaterThan(10);
  expect(shaping.every(({ needles }) => needles.length === 1)).toBe(true);
  expect(needlesOfAct({ kind: 'eyelets', needles: [-2, -1, 1] as never }).map(run)).toEqual(['L2–L1', 'R2']);
});
