import { describe, expect, it } from 'vitest';
import { swatch } from './examples/swatch.ts';
import { end, stop, stretch } from './examples/example.ts';
import { knit, type ActJson, type OrderJson, type StopJson } from './index.ts';

const PLAIN = 'L3–R3, plain, off, slate';

describe('the simulated knitter refuses an order that does not go on', () => {
  it.each<[string, OrderJson, string]>([
    [
      'a stop at a reading that has passed',
      swatch.order.toSpliced(2, 0, stop(0, 'left', PLAIN, [])),
      'Reading 3, order: reading 0 has passed.',
    ],
    [
      'a stop that nothing leads to',
      swatch.order.toSpliced(1, 1),
      'Reading 1, order: nothing says how the counter comes to 3.',
    ],
    [
      'a stretch that does not join the stop before it',
      swatch.order.with(1, stretch(3, 3, 'right', PLAIN)),
      'Reading 1, order: rows 3–3 do not go on with row 2.',
    ],
    [
      'a stretch behind a stretch',
      swatch.order.toSpliced(1, 1, stretch(2, 2, 'right', PLAIN), stretch(3, 3, 'left', PLAIN)),
      'Reading 2, order: a stretch follows a stop.',
    ],
    [
      'a stretch without rows',
      swatch.order.with(1, stretch(2, 1, 'right', PLAIN)),
      'Reading 1, order: a stretch has at least one row.',
    ],
    [
      'a stretch from the other side',
      swatch.order.with(1, stretch(2, 3, 'left', PLAIN)),
      'Reading 1, order: the carriage stands at the right.',
    ],
    [
      'a stop from the other side',
      swatch.order.with(2, stop(3, 'left', PLAIN, [])),
      'Reading 3, order: the carriage stands at the right.',
    ],
    [
      'a row that does not follow its reading',
      swatch.order.with(2, { ...(swatch.order[2] as StopJson), row: 5 }),
      'Reading 3, order: row 5 does not follow this reading.',
    ],
    [
      'rows behind the last stop',
      [...swatch.order, stop(4, 'left', PLAIN, [])],
      'Reading 4, order: rows follow a stop that no row belongs to.',
    ],
    [
      'two stops of one name',
      swatch.order.with(2, { ...(swatch.order[2] as StopJson), id: 's0' }),
      'Reading 3, order: two stops are called s0.',
    ],
    ['an order without its end', swatch.order.slice(0, -1), 'Reading 4, end: stitches are left on the needles.'],
    [
      'needles said to be in work that are not',
      swatch.order.with(1, stretch(2, 3, 'right', 'L3–R4, plain, off, slate')),
      'Reading 1, order: L3–R3 are in work, not L3–R4.',
    ],
    [
      'a carriage said to be set otherwise',
      swatch.order.with(1, stretch(2, 3, 'right', 'L3–R3, pattern, off, slate')),
      'Reading 1, order: the carriage is set to plain, not to pattern.',
    ],
    [
      'selecting said to be on',
      swatch.order.with(1, stretch(2, 3, 'right', 'L3–R3, plain, selecting, slate')),
      'Reading 1, order: selecting is off.',
    ],
    [
      'a yarn said to be in a feeder',
      swatch.order.with(1, stretch(2, 3, 'right', 'L3–R3, plain, off, slate, chalk')),
      'Reading 1, order: feeder 2 holds no yarn, not chalk.',
    ],
  ])('%s', (_, order, why) => {
    expect(knit(order, swatch)).toMatchObject({ ok: false, why });
  });

  it.each<[string, unknown, string]>([
    ['no order at all', null, 'The order cannot be read: : Invalid input: expected array, received null'],
    ['needle 0', swatch.order.with(1, stretch(2, 3, 'right', 'L0–R3, plain, off, slate')), '1.needles.0: is no needle'],
    [
      'needles from right to left',
      swatch.order.with(1, stretch(2, 3, 'right', 'R3–L3, plain, off, slate')),
      '1.needles: runs from right to left',
    ],
    [
      'an act that it does not know',
      swatch.order.with(-1, end(4, 'left', [{ act: 'block' } as unknown as ActJson])),
      '3.acts.0.act: ',
    ],
  ])('%s', (_, order, why) => {
    const done = knit(order, swatch);
    expect(done).toMatchObject({ ok: false, at: null, act: 'order' });
    expect(!done.ok && done.why).toContain(why);
  });
});
