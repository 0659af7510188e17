import { describe, expect, it } from 'vitest';
import { allOver } from './examples/all-over.ts';
import { band } from './examples/band.ts';
import { ownBalls } from './examples/own-balls.ts';
import { touching } from './examples/touching.ts';
import { twoPatterns } from './examples/two-patterns.ts';
import type { Example } from './examples/index.ts';
import { type Acts, also, changed, told, without } from './examples/told.ts';
import { knit } from './index.ts';

describe('the simulated knitter refuses what cannot be wrapped, laid, hooked up or counted', () => {
  it.each<[what: string, example: Example, reading: number, acts: Acts, why: string]>([
    [
      'a wrap at the other side',
      band,
      3,
      changed('wrap', { edge: 'left', needle: 'L2' }),
      'Reading 3, wrap: the carriage stands at the right, and only that side is wrapped.',
    ],
    [
      'a wrap away from the figure',
      band,
      3,
      changed('wrap', { needle: 'R2' }),
      'Reading 3, wrap: R2 is not beside the figure: R1 does not stand forward.',
    ],
    [
      'a wrap on a needle of the figure',
      band,
      3,
      changed('wrap', { needle: 'L1' }),
      'Reading 3, wrap: L1 stands forward.',
    ],
    [
      'a wrap on a needle that is not there',
      band,
      3,
      changed('wrap', { needle: 'R9' }),
      'Reading 3, wrap: R9 is not in work.',
    ],
    [
      'a wrap on a needle that has just come',
      allOver,
      1,
      also(
        { act: 'push-back', needles: ['R5'] },
        { act: 'push-forward', needles: ['R4'] },
        { act: 'strand', id: 1, at: 'start' },
        { act: 'wrap', needle: 'R5', edge: 'right', yarn: 'slate', strand: 1 },
      ),
      'Reading 1, wrap: R5 came into work for this row.',
    ],
    [
      'a wrap behind the last row',
      band,
      8,
      also({ act: 'wrap', needle: 'L2', edge: 'left', yarn: 'slate', strand: 'left' }),
      'Reading 8, wrap: no row follows.',
    ],
    [
      'a wrap of a strand that has been worked in',
      band,
      5,
      changed('wrap', { strand: 'left' }),
      'Reading 5, wrap: strand left has been worked in.',
    ],
    [
      'a strand that changes its yarn',
      band,
      5,
      changed('wrap', { yarn: 'moss' }),
      'Reading 5, wrap: strand right is slate, not moss.',
    ],
    [
      'a strand that hangs at the end',
      band,
      6,
      without('strand'),
      'Reading 8, end: strand right still hangs from its last wrap.',
    ],
    [
      'a strand for nothing',
      band,
      3,
      also({ act: 'strand', id: 'third', at: 'start' }),
      'Reading 8, end: strand third was cut and has wrapped nothing.',
    ],
    [
      'a ball laid with the second feeder full',
      band,
      4,
      also({ act: 'lay', ball: 1, yarn: 'moss', needles: [['L2', 'R1']] }),
      'Reading 4, lay: feeder 2 holds chalk: its yarn would go into the same hooks.',
    ],
    [
      'a needle that no ball is laid on',
      ownBalls,
      1,
      (acts) => acts.slice(0, -1),
      'Reading 1, row: L4 L3 would drop: no yarn is in feeder 2, and none was laid.',
    ],
    [
      'a ball laid on a needle that stays back',
      ownBalls,
      2,
      changed('lay', { needles: [['L4', 'L3']] }),
      'Reading 2, lay: L3 does not stand forward.',
    ],
    [
      'two balls on one needle',
      ownBalls,
      1,
      changed('lay', { needles: [['L4', 'L3']] }),
      'Reading 1, lay: chalk lies in the hook of L4 already.',
    ],
    [
      'a ball that changes its yarn',
      ownBalls,
      2,
      changed('lay', { ball: 'left', yarn: 'moss', needles: [['L4', 'L4']] }),
      'Reading 2, lay: ball left is chalk, not moss.',
    ],
    [
      'a ball laid twice',
      ownBalls,
      2,
      also({ act: 'lay', ball: 'left', yarn: 'chalk', needles: [['R4', 'R4']] }),
      'Reading 2, lay: moss lies in the hook of R4 already.',
    ],
    [
      'balls right beside each other that are not crossed',
      touching,
      1,
      changed('lay', { crosses: [] }),
      'Reading 1, lay: a gap opens between ball right and ball left: their yarns are not crossed.',
    ],
    [
      'a ball crossed with one that is not beside it',
      ownBalls,
      2,
      changed('lay', { crosses: ['left'] }),
      'Reading 2, lay: ball left does not lie right beside ball left.',
    ],
    [
      'a float hooked up that is not there',
      twoPatterns,
      5,
      changed('hook-up', { float: ['L3', 'R2'] }),
      'Reading 5, hook-up: no float of chalk lies behind L3–R2.',
    ],
    [
      'a float hooked up beside itself',
      twoPatterns,
      5,
      changed('hook-up', { needle: 'R4' }),
      'Reading 5, hook-up: R4 is not above the float.',
    ],
    [
      'a look that counts otherwise',
      band,
      4,
      changed('check', { forward: 4 }),
      'Reading 4, check: 3 needles stand forward, not 4.',
    ],
    [
      'acts that hands do in another order',
      band,
      3,
      (acts) => [...acts.slice(1), ...acts.slice(0, 1)],
      'Reading 3, tension: comes too late among the acts of this reading.',
    ],
  ])('%s', (_, example, reading, acts, why) => {
    expect(knit(told(example.order, reading, acts), example)).toMatchObject({ ok: false, why });
  });
});
