/** A row all in contrast between two that have figure: main waits, contrast goes to the first feeder. */
import { end, MACHINE, stop, type Example } from './example.ts';

export const oneYarn: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: { bars: [{ motif: 'bar', width: 2, rows: [[0], [0, 1], [1]], isEverywhere: true }] },
  order: [
    stop(0, 'right', 'L3–R3, plain, selecting, slate, none', [
      { act: 'cast-on', needles: ['L3', 'R3'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      {
        act: 'first-needles',
        pattern: 'bars',
        row: 2,
        groups: [{ needle: 'L3', last: 'R3', motif: 'bar', copies: 3, mirrored: false }],
      },
      { act: 'end-needles', on: true },
      { act: 'selecting', on: true },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stop(1, 'left', 'L3–R3, pattern, selecting, slate, chalk', [
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
    ]),
    stop(2, 'right', 'L3–R3, plain, selecting, chalk, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'unthread', feeder: 1, yarn: 'slate', waitsAt: 'R1' },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'R3' },
      { act: 'thread', feeder: 1, yarn: 'chalk' },
    ]),
    stop(3, 'left', 'L3–R3, pattern, selecting, slate, chalk', [
      { act: 'unthread', feeder: 1, yarn: 'chalk', waitsAt: 'L3' },
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 1, yarn: 'slate' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
    ]),
    stop(4, 'right', 'L3–R3, plain, off, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' },
      { act: 'selecting', on: false },
    ]),
    end(5, 'left', [{ act: 'finish', how: 'cast-off', needles: ['L3', 'R3'], startsAt: 'left', mm: 120 }]),
  ],
  fabric: [
    'slate L3–R3',
    'chalk L3, slate L2, chalk L1, slate R1, chalk R2–R3',
    'chalk L3–R3',
    'chalk L3–L2, slate L1, chalk R1, slate R2, chalk R3',
    'slate L3–R3',
  ],
};
