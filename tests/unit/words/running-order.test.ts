import { describe, expect, it } from 'vitest';
import { slotLabelled, type Run } from '@shared/bed/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { Act } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { runningOrderWords as runningOrder } from '@shared/words/running-order.ts';
import { actJson } from '../../../src-main/cli/json/running-order.ts';
import { actRead } from '../../reference/told/sentences.ts';
import { knitRead, stopRead } from '../../reference/told/steps.ts';
import { small } from '../project/small-project.ts';

const at = slotLabelled;
const on = (first: string, last = first): Run => ({ first: at(first), last: at(last) });

/** Names that could be taken for the sentences around them. */
const NAMES = ['slate', 'chalk', '"chalk", into feeder 1', 'chalk.', 'a; L1 to b'] as const;
const names = { yarn: (index: number) => NAMES[index] ?? '', motif: (id: string) => id, unit: 'cm' as const };

/** What the JSON says of an act, in whole centimetres. */
function plainly(act: Act): unknown {
  const motifs = ['gull', 'dots', 'a; L1 to b'].map((name) => ({ id: name as MotifId, name }));
  const project = { ...small, yarns: NAMES.map((name) => ({ name })), motifs } as unknown as ProjectAt;
  const said = actJson(act, project);
  return 'mm' in said && said.mm !== null ? { ...said, mm: Math.ceil(said.mm / 10) * 10 } : said;
}

/** One of each kind, and the forms that each takes. */
const ACTS: readonly (readonly [said: string, act: Act])[] = [
  [
    'Cast on 96 stitches, L48–R48, closed, in slate.',
    { kind: 'cast-on', needles: on('L48', 'R48'), yarn: 0, ball: null, how: 'closed', wasteRows: 0, wasteTension: '' },
  ],
  [
    'Cast on 2 stitches, L1–R1, closed, from ball 2, chalk.',
    { kind: 'cast-on', needles: on('L1', 'R1'), yarn: 1, ball: 2, how: 'closed', wasteRows: 0, wasteTension: '' },
  ],
  [
    'Cast on 1 stitch, R1, closed, in chalk..',
    { kind: 'cast-on', needles: on('R1'), yarn: 3, ball: null, how: 'closed', wasteRows: 0, wasteTension: '' },
  ],
  [
    'Cast on 2 stitches, L1–R1, open: 1 row of waste yarn and the ravel cord, then go on in slate.',
    { kind: 'cast-on', needles: on('L1', 'R1'), yarn: 0, ball: null, how: 'open', wasteRows: 1, wasteTension: '' },
  ],
  [
    'Cast on 2 stitches, L1–R1, open: 8 rows of waste yarn at tension 5 and the ravel cord, then go on in slate.',
    { kind: 'cast-on', needles: on('L1', 'R1'), yarn: 0, ball: null, how: 'open', wasteRows: 8, wasteTension: '5' },
  ],
  [
    'Pick up 2 stitches, L1–R1, in slate.',
    { kind: 'cast-on', needles: on('L1', 'R1'), yarn: 0, ball: null, how: 'picked-up', wasteRows: 0, wasteTension: '' },
  ],
  ['Set the row counter to 0.', { kind: 'counter', reading: 0 }],
  ['Set the tension for the facing to 6. (loose).', { kind: 'tension', part: 'facing', text: '6. (loose)' }],
  ['Set the tension for the last row, loosest.', { kind: 'tension', part: 'lastRow', text: '' }],
  ['Set the tension for the joining row, looser.', { kind: 'tension', part: 'joiningRow', text: '' }],
  ['Set the tension for the section rib to 4/5.', { kind: 'tension', part: { section: 'rib' }, text: '4/5' }],
  ['Thread "chalk", into feeder 1 into feeder 2.', { kind: 'thread', feeder: 2, yarn: 2, ball: null }],
  [
    'Take chalk. out of feeder 2 and cut it, leaving a tail of 15 cm.',
    { kind: 'unthread', feeder: 2, yarn: 3, ball: null, waitsAt: 'cut', tailMm: 150 },
  ],
  [
    'Take slate out of feeder 1 and let it wait at R4.',
    { kind: 'unthread', feeder: 1, yarn: 0, ball: null, waitsAt: at('R4'), tailMm: null },
  ],
  ['Thread ball 2, chalk, into feeder 2.', { kind: 'thread', feeder: 2, yarn: 1, ball: 2 }],
  [
    'Take ball 2, chalk, out of feeder 2 and let it wait at R4.',
    { kind: 'unthread', feeder: 2, yarn: 1, ball: 2, waitsAt: at('R4'), tailMm: null },
  ],
  ['Cut ball 12, chalk., leaving a tail of 15 cm.', { kind: 'cut', ball: 12, yarn: 3, tailMm: 150 }],
  ['Cut the yarn of the cast-on, slate, leaving a tail of 15 cm.', { kind: 'cut', ball: null, yarn: 0, tailMm: 150 }],
  ['Set the carriage to knit plain.', { kind: 'carriage', set: 'plain' }],
  ['Set the carriage to knit the pattern.', { kind: 'carriage', set: 'pattern' }],
  ['Switch needle selection on.', { kind: 'selecting', isOn: true }],
  ['Switch end-needle selection off.', { kind: 'end-needles', isOn: false }],
  [
    'Set pattern band 2 for row 61: L48 to L13, 3 copies of gull; R12 to R47, 1 copy of a; L1 to b, mirrored.',
    {
      kind: 'first-needles',
      patterns: [{ kind: 'band', number: 1 }],
      row: 61,
      groups: [
        { needle: at('L48'), last: at('L13'), motif: 'gull' as MotifId, copies: 3, isMirrored: false },
        { needle: at('R12'), last: at('R47'), motif: 'a; L1 to b' as MotifId, copies: 1, isMirrored: true },
      ],
    },
  ],
  [
    'Set pattern band 1 with all-over 2 for row 2: L3 to R3, 3 copies of dots.',
    {
      kind: 'first-needles',
      patterns: [
        { kind: 'band', number: 0 },
        { kind: 'all-over', number: 1 },
      ],
      row: 2,
      groups: [{ needle: at('L3'), last: at('R3'), motif: 'dots' as MotifId, copies: 3, isMirrored: false }],
    },
  ],
  ['Increase 1 stitch at the left edge: L49.', { kind: 'increase', edge: 'left', needles: [at('L49')] }],
  [
    'Decrease 2 stitches at the right edge: R48–R49.',
    { kind: 'decrease', edge: 'right', needles: [at('R48'), at('R49')] },
  ],
  ['Cast off 4 stitches, L49–L46, at the left edge.', { kind: 'cast-off', edge: 'left', needles: on('L49', 'L46') }],
  ['Cast on 1 stitch, R9, at the right edge.', { kind: 'cast-on-more', edge: 'right', needles: on('R9') }],
  [
    'Make 5 eyelets, each loop moved onto its left neighbour and its needle left in work: every 2nd needle from L4 to R5.',
    { kind: 'eyelets', needles: ['L4', 'L2', 'R1', 'R3', 'R5'].map(at) },
  ],
  [
    'Make 1 eyelet, each loop moved onto its left neighbour and its needle left in work: R1.',
    { kind: 'eyelets', needles: [at('R1')] },
  ],
  ['Push 4 needles forward: L5, L2–R1.', { kind: 'push-forward', needles: ['L5', 'L2', 'L1', 'R1'].map(at) }],
  ['Put 1 needle back: R4.', { kind: 'push-back', needles: [at('R4')] }],
  [
    'Wrap L49 at the left edge of the figure with strand 3 of slate.',
    { kind: 'wrap', needle: at('L49'), edge: 'left', yarn: 0, strand: 3 },
  ],
  ['Take up strand 3, cut to 46 cm.', { kind: 'strand', strand: 3, at: 'start', mm: 450.2 }],
  ['Strand 3, 46 cm, ends: work it in.', { kind: 'strand', strand: 3, at: 'end', mm: 460 }],
  [
    'Lay ball 2, chalk, into the hooks of R3–R4, L1.',
    { kind: 'lay', ball: 2, yarn: 1, needles: [on('R3', 'R4'), on('L1')], crosses: [] },
  ],
  [
    'Lay ball 3, chalk, into the hooks of R3, its yarn crossed with that of ball 1.',
    { kind: 'lay', ball: 3, yarn: 1, needles: [on('R3')], crosses: [1] },
  ],
  [
    'Lay ball 3, chalk, into the hooks of R3, its yarn crossed with that of ball 1 and ball 2.',
    { kind: 'lay', ball: 3, yarn: 1, needles: [on('R3')], crosses: [1, 2] },
  ],
  [
    'Hang the hem on L7–R7: 14 loops, one to a needle, with the half loop at the left edge.',
    { kind: 'hang-hem', needles: on('L7', 'R7'), loops: 14, edgeLoop: 'left' },
  ],
  ['Pull out the ravel cord and take off the waste yarn.', { kind: 'remove-waste' }],
  [
    'Hook the float of chalk behind L2–R2 up onto R1.',
    { kind: 'hook-up', needle: at('R1'), yarn: 1, float: on('L2', 'R2') },
  ],
  [
    'Latch up the floats of chalk behind R1 of rows 3–4 into a chain, no tighter than the fabric, and hang its last loop on R1.',
    { kind: 'latch-up', needle: at('R1'), yarn: 1, first: 3, last: 4 },
  ],
  [
    'Latch up the floats of ball 2, chalk, behind R1 of rows 3–4 into a chain, no tighter than the fabric, and hang its last loop on R1.',
    { kind: 'latch-up', needle: at('R1'), yarn: 1, ball: 2, first: 3, last: 4 },
  ],
  ['Hang the weights.', { kind: 'weights', do: 'hang' }],
  ['Move the weights up.', { kind: 'weights', do: 'move' }],
  ['Take the weights off.', { kind: 'weights', do: 'off' }],
  [
    'Check that 4 needles stand forward, from L4 to R4.',
    { kind: 'check', forward: 4, first: at('L4'), last: at('R4') },
  ],
  [
    'Check that 1 needle stands forward, from L4 to L4.',
    { kind: 'check', forward: 1, first: at('L4'), last: at('L4') },
  ],
  [
    'Cast off all 96 stitches, L48–R48, starting at the right: it takes 121 cm of yarn.',
    { kind: 'finish', how: 'cast-off', needles: on('L48', 'R48'), startsAt: 'right', mm: 1201 },
  ],
  [
    'Knit all 1 stitch, R1, off on waste yarn, starting at the right.',
    { kind: 'finish', how: 'waste-yarn', needles: on('R1'), startsAt: 'right', mm: null },
  ],
  [
    'Take all 2 stitches, L1–R1, off on a thread, starting at the left: it takes 3 cm of yarn.',
    { kind: 'finish', how: 'on-a-thread', needles: on('L1', 'R1'), startsAt: 'left', mm: 25 },
  ],
];

describe('the sentences of the running order', () => {
  it.each(ACTS)('%s', (said, act) => {
    expect(runningOrder.act(act, names)).toBe(said);
    expect(actRead(said)).toEqual(plainly(act));
  });

  it('say where the counter and the carriage are before a row', () => {
    const stop = { row: 24, counter: 23, carriageAt: 'left' } as const;
    const last = { ...stop, row: null, carriageAt: 'right' } as const;
    expect(runningOrder.stop(stop)).toBe('before row 24 · counter reads 23 · carriage at the left (COL)');
    expect(runningOrder.stop(last)).toBe('after row 23 · counter reads 23 · carriage at the right (COR)');
    expect(stopRead(runningOrder.stop(stop), [])).toMatchObject(stop);
    expect(stopRead(runningOrder.stop(last), [])).toMatchObject(last);
  });

  it('say which rows are knitted in one go', () => {
    expect(knitRead(runningOrder.knit(24, 24))).toEqual([24, 24]);
    expect(runningOrder.knit(24, 59)).toBe('Knit rows 24–59, until the counter reads 59.');
    expect(knitRead(runningOrder.knit(24, 59))).toEqual([24, 59]);
  });
});
