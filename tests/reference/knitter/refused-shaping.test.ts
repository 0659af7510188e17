import { describe, expect, it } from 'vitest';
import { allOver } from './examples/all-over.ts';
import { bandAboveHem } from './examples/band-above-hem.ts';
import { byHand } from './examples/by-hand.ts';
import { hem } from './examples/hem.ts';
import { shaped } from './examples/shaped.ts';
import { swatch } from './examples/swatch.ts';
import type { Example } from './examples/index.ts';
import { type Acts, also, changed, first, told, without } from './examples/told.ts';
import { knit, type ActJson } from './index.ts';

describe('the simulated knitter refuses what no needle can take or give', () => {
  it.each<[what: string, example: Example, reading: number, acts: Acts, why: string]>([
    [
      'an increase away from the work',
      shaped,
      2,
      changed('increase', { edge: 'left', needles: ['L5'] }),
      'Reading 2, increase: L5 is not beside the work: at the left L4 is.',
    ],
    [
      'an increase of two',
      shaped,
      2,
      changed('increase', { edge: 'left', needles: ['L5', 'L4'] }),
      'Reading 2, increase: one stitch is shaped at an edge at a time: more are cast on or off.',
    ],
    [
      'a decrease inside the work',
      shaped,
      9,
      changed('decrease', { needles: ['L4'] }),
      'Reading 9, decrease: the outermost needle at the left is L5.',
    ],
    [
      'casting off away from the carriage',
      shaped,
      3,
      changed('cast-off', { edge: 'left', needles: ['L4', 'L3'] }),
      'Reading 3, cast-off: the carriage and its yarn stand at the right: stitches are cast off there.',
    ],
    [
      'casting off all of a row that goes on',
      shaped,
      3,
      changed('cast-off', { needles: ['L4', 'R4'] }),
      'Reading 3, cast-off: no stitch would be left to knit.',
    ],
    [
      'casting on away from the carriage',
      shaped,
      6,
      changed('cast-on-more', { edge: 'right', needles: ['R3', 'R4'] }),
      'Reading 6, cast-on-more: the carriage and its yarn stand at the left: stitches are cast on there.',
    ],
    [
      'casting on away from the work',
      shaped,
      6,
      changed('cast-on-more', { needles: ['L5', 'L4'] }),
      'Reading 6, cast-on-more: L5 L4 is not beside the work: at the left L3 is.',
    ],
    [
      'a second cast-on',
      swatch,
      0,
      first({ act: 'cast-on', needles: ['L3', 'R3'], yarn: 'slate', how: 'closed' }),
      'Reading 0, cast-on: the piece has been cast on.',
    ],
    [
      'a row with nothing cast on',
      swatch,
      0,
      without('cast-on'),
      'Reading 0, row: there is nothing on the needles to knit.',
    ],
    [
      'an open start without waste yarn',
      hem,
      0,
      changed('cast-on', { wasteRows: 0 }),
      'Reading 0, cast-on: an open start needs rows of waste yarn.',
    ],
    [
      'a counter that still has the waste rows',
      hem,
      0,
      without('counter'),
      'Reading 8, order: the counter should read 0 before row 1.',
    ],
    [
      'loops hung that are not there',
      hem,
      7,
      changed('hang-hem', { loops: 5 }),
      'Reading 7, hang-hem: 5 loops are to be hung, but there are 4.',
    ],
    [
      'loops hung on other needles',
      hem,
      7,
      changed('hang-hem', { needles: ['L1', 'R1'] }),
      'Reading 7, hang-hem: the stitches are on L2–R2, not on L1–R1.',
    ],
    [
      'more needles than loops',
      hem,
      4,
      also({ act: 'increase', edge: 'left', needles: ['L3'] }),
      'Reading 7, hang-hem: the stitches are on L3–R2, not on L2–R2.',
    ],
    [
      'the hem of a closed start',
      hem,
      0,
      changed('cast-on', { how: 'closed' }),
      'Reading 7, hang-hem: the start is not open: it has no loops to hang.',
    ],
    [
      'a hem under its weights',
      hem,
      7,
      (acts) => acts.slice(1),
      'Reading 7, hang-hem: the weights still pull the hem down.',
    ],
    [
      'a hem hung twice',
      hem,
      7,
      (acts) => [...acts.slice(0, 2), ...acts.slice(1)],
      'Reading 7, hang-hem: the hem hangs already.',
    ],
    [
      'a joining row that is shaped',
      hem,
      7,
      also({ act: 'increase', edge: 'left', needles: ['L3'] }),
      'Reading 7, increase: the row that joins the hem is not shaped.',
    ],
    [
      'a joining row in pattern',
      hem,
      7,
      also({ act: 'push-forward', needles: ['L1'] }, { act: 'carriage', set: 'pattern' }),
      'Reading 7, row: the row that joins the hem is knitted plain.',
    ],
    [
      'an eyelet at the edge',
      hem,
      3,
      changed('eyelets', { needles: ['L2'] }),
      'Reading 3, eyelets: L2 is at the edge, which an eyelet would open.',
    ],
    [
      'eyelets of a needle and both its neighbours',
      allOver,
      1,
      also({ act: 'eyelets', needles: ['L2', 'L1', 'R1'] }),
      'Reading 1, eyelets: both neighbours of L1 are emptied too.',
    ],
    [
      'an eyelet where no loop is',
      hem,
      3,
      also({ act: 'eyelets', needles: ['L1'] }),
      'Reading 3, eyelets: L1 holds no loop.',
    ],
    [
      'waste removed before the hem hangs',
      bandAboveHem,
      4,
      (acts) => [acts[1], acts[0], ...acts.slice(2)] as ActJson[],
      'Reading 4, remove-waste: the hem does not hang yet: the loops of the cast-on row would run.',
    ],
    [
      'waste that stays in a hem',
      hem,
      8,
      without('remove-waste'),
      'Reading 10, end: the waste yarn has not been taken out.',
    ],
    [
      'waste removed that is not there',
      swatch,
      3,
      first({ act: 'remove-waste' }),
      'Reading 3, remove-waste: there is no waste yarn.',
    ],
    [
      'a row without weights',
      swatch,
      0,
      without('weights'),
      'Reading 0, row: no weights hang: the loops would ride up.',
    ],
    ['weights hung twice', hem, 4, changed('weights', { do: 'hang' }), 'Reading 4, weights: the weights hang already.'],
    [
      'a piece that is not taken off',
      swatch,
      4,
      without('finish'),
      'Reading 4, end: stitches are left on the needles.',
    ],
    [
      'a piece that is taken off in part',
      swatch,
      4,
      changed('finish', { needles: ['L3', 'R2'] }),
      'Reading 4, finish: the stitches are on L3–R3, not on L3–R2.',
    ],
    [
      'casting off from the other side',
      swatch,
      4,
      changed('finish', { startsAt: 'right' }),
      'Reading 4, finish: the carriage and its yarn stand at the left.',
    ],
    [
      'casting off with a yarn that was cut too short',
      hem,
      10,
      changed('unthread', { mm: 70 }),
      'Reading 10, finish: the yarn was cut to 70 mm, and casting off takes 80.',
    ],
    [
      'a piece taken off too soon',
      swatch,
      3,
      also({ act: 'finish', how: 'cast-off', needles: ['L3', 'R3'], startsAt: 'right' }),
      'Reading 3, finish: rows follow.',
    ],
    [
      'contrast that is never cut',
      byHand,
      3,
      changed('unthread', { waitsAt: 'L1' }),
      'Reading 5, end: chalk still waits at the edge, uncut.',
    ],
    [
      'main that is never cut',
      byHand,
      5,
      changed('unthread', { waitsAt: 'R3' }),
      'Reading 5, end: slate still waits at the edge, uncut.',
    ],
  ])('%s', (_, example, reading, acts, why) => {
    expect(knit(told(example.order, reading, acts), example)).toMatchObject({ ok: false, why });
  });
});
