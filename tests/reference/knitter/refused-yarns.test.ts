import { describe, expect, it } from 'vitest';
import { allOver } from './examples/all-over.ts';
import { band } from './examples/band.ts';
import { oneYarn } from './examples/one-yarn.ts';
import { swatch } from './examples/swatch.ts';
import { twoPatterns } from './examples/two-patterns.ts';
import type { Example } from './examples/index.ts';
import { type Acts, also, changed, first, told, without } from './examples/told.ts';
import { knit } from './index.ts';

describe('the simulated knitter refuses what no pass can knit', () => {
  it.each<[what: string, example: Example, reading: number, acts: Acts, why: string]>([
    [
      'a yarn that is not threaded',
      swatch,
      0,
      without('thread'),
      'Reading 0, row: no yarn is in feeder 1: 6 stitches would drop.',
    ],
    [
      'a second yarn in a feeder',
      swatch,
      0,
      also({ act: 'thread', feeder: 1, yarn: 'chalk' }),
      'Reading 0, thread: feeder 1 holds slate.',
    ],
    [
      'a yarn taken out that is not there',
      band,
      6,
      changed('unthread', { yarn: 'moss' }),
      'Reading 6, unthread: feeder 2 holds chalk, not moss.',
    ],
    [
      'a yarn that waits where it was not knitted',
      oneYarn,
      2,
      changed('unthread', { waitsAt: 'L2' }),
      'Reading 2, unthread: slate was knitted last on R1: it cannot wait at L2.',
    ],
    [
      'stitches that drop for want of contrast',
      band,
      4,
      first({ act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' }),
      'Reading 4, row: L2 L1 R1 would drop: no yarn is in feeder 2, and none was laid.',
    ],
    [
      'stitches that drop for want of main',
      band,
      4,
      first({ act: 'unthread', feeder: 1, yarn: 'slate', waitsAt: 'cut' }),
      'Reading 4, row: L4 L3 R2 R3 R4 would drop: no yarn is in feeder 1.',
    ],
    [
      'two yarns in a plain pass',
      band,
      6,
      without('unthread'),
      'Reading 6, row: a plain pass would catch chalk in feeder 2 as well.',
    ],
    [
      'contrast with nothing to knit',
      band,
      4,
      () => [{ act: 'push-back', needles: ['L2', 'L1', 'R1'] }],
      'Reading 4, row: chalk in feeder 2 would lie loose from edge to edge.',
    ],
    [
      'a pattern row without a pass before',
      band,
      2,
      without('selecting'),
      'Reading 3, check: 0 needles stand forward, not 1.',
    ],
    [
      'a pattern row that nobody chose',
      twoPatterns,
      0,
      without('selecting'),
      'Reading 1, row: no pass has chosen the needles of this row.',
    ],
    [
      'a pattern on row 1 after a closed start',
      allOver,
      0,
      changed('cast-on', { how: 'closed' }),
      'Reading 0, row: no pass has chosen the needles of this row.',
    ],
    [
      'selecting without a pattern',
      band,
      2,
      without('first-needles'),
      'Reading 2, row: selecting is on and no pattern is set.',
    ],
    [
      'selecting a row too soon',
      band,
      2,
      changed('first-needles', { row: 5 }),
      'Reading 2, row: the pass of row 3 would choose row 5 of band-1 already.',
    ],
    [
      'a pattern that was not put in',
      band,
      2,
      changed('first-needles', { pattern: 'band-2' }),
      'Reading 2, first-needles: the machine has no picture of band-2.',
    ],
    [
      'another motif than the machine reads',
      band,
      2,
      changed('first-needles', { groups: [{ needle: 'L2', last: 'R1', motif: 'star', copies: 1, mirrored: false }] }),
      'Reading 2, first-needles: the machine reads diamond there, not star.',
    ],
    [
      'a group of another width',
      band,
      2,
      changed('first-needles', {
        groups: [{ needle: 'L2', last: 'R2', motif: 'diamond', copies: 1, mirrored: false }],
      }),
      'Reading 2, first-needles: 1 of 3 needles do not fill L2–R2.',
    ],
    [
      'groups that the pattern has not',
      band,
      2,
      changed('first-needles', {
        groups: [0, 1].map(() => ({ needle: 'L2', last: 'R1', motif: 'diamond', copies: 1, mirrored: false })),
      }),
      'Reading 2, first-needles: band-1 has 1 groups, not 2.',
    ],
    [
      'a row in pattern above the pattern',
      band,
      6,
      () => [],
      'Reading 6, row: the pattern has ended: nobody knows which needles stand forward.',
    ],
    [
      'a needle pushed that is not in work',
      band,
      3,
      first({ act: 'push-forward', needles: ['L5'] }),
      'Reading 3, push-forward: L5 is not in work.',
    ],
  ])('%s', (_, example, reading, acts, why) => {
    expect(knit(told(example.order, reading, acts), example)).toMatchObject({ ok: false, why });
  });
});
