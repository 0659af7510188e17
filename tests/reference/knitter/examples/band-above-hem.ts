/** A band that begins two rows above a hem, as early as it can: the joining row is its set-up row. */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

const PLAIN = 'L2–R2, plain, off, slate, none';

export const bandAboveHem: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: { 'band-1': [{ motif: 'post', width: 2, rows: [[0]] }] },
  order: [
    stop(0, 'left', PLAIN, [
      { act: 'cast-on', needles: ['L2', 'R2'], yarn: 'slate', how: 'open', wasteRows: 8 },
      { act: 'counter', reading: 0 },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stretch(2, 4, 'right', PLAIN),
    stop(4, 'left', 'L2–R2, plain, selecting, slate, none', [
      { act: 'hang-hem', needles: ['L2', 'R2'], loops: 4, edgeLoop: 'right' },
      { act: 'remove-waste' },
      {
        act: 'first-needles',
        pattern: 'band-1',
        row: 6,
        groups: [{ needle: 'L1', last: 'R1', motif: 'post', copies: 1, mirrored: true }],
      },
      { act: 'selecting', on: true },
    ]),
    stop(5, 'right', 'L2–R2, pattern, selecting, slate, chalk', [
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
    ]),
    stop(6, 'left', PLAIN, [
      { act: 'carriage', set: 'plain' },
      { act: 'selecting', on: false },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' },
    ]),
    end(7, 'right', [{ act: 'finish', how: 'cast-off', needles: ['L2', 'R2'], startsAt: 'right', mm: 80 }]),
  ],
  fabric: [...Array.from({ length: 5 }, () => 'slate L2–R2'), 'slate L2–L1, chalk R1, slate R2', 'slate L2–R2'],
};
