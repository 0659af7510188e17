/**
 * An all-over from the first row, which the last pass of the waste yarn
 * chooses, with end needles on; its edge needles are put right where the
 * piece is shaped. The start stays on waste yarn for a rib.
 */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

export const allOver: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: {
    bars: [
      {
        motif: 'bar',
        width: 4,
        rows: [
          [0, 1],
          [1, 2],
          [2, 3],
          [3, 0],
          [0, 1],
          [1, 2],
        ],
        isEverywhere: true,
      },
    ],
  },
  order: [
    stop(0, 'left', 'L4–R4, pattern, selecting, slate, chalk', [
      { act: 'cast-on', needles: ['L4', 'R4'], yarn: 'slate', how: 'open', wasteRows: 7 },
      { act: 'counter', reading: 0 },
      {
        act: 'first-needles',
        pattern: 'bars',
        row: 1,
        groups: [{ needle: 'L4', last: 'R4', motif: 'bar', copies: 2, mirrored: false }],
      },
      { act: 'end-needles', on: true },
      { act: 'selecting', on: true },
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 1, yarn: 'slate' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
    ]),
    stop(1, 'right', 'L5–R5, pattern, selecting, slate, chalk', [
      { act: 'increase', edge: 'left', needles: ['L5'] },
      { act: 'increase', edge: 'right', needles: ['R5'] },
      { act: 'push-back', needles: ['L4', 'R4'] },
      { act: 'push-forward', needles: ['L5', 'R5'] },
    ]),
    stretch(3, 3, 'left', 'L5–R5, pattern, selecting, slate, chalk'),
    stop(3, 'right', 'L4–R5, pattern, selecting, slate, chalk', [
      { act: 'decrease', edge: 'left', needles: ['L5'] },
      { act: 'push-forward', needles: ['L4'] },
    ]),
    stop(4, 'left', 'L4–R5, plain, off, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' },
      { act: 'selecting', on: false },
      { act: 'push-back', needles: ['L4', 'R5'] },
    ]),
    end(5, 'right', [{ act: 'finish', how: 'on-a-thread', needles: ['L4', 'R5'], startsAt: 'right', mm: 100 }]),
  ],
  fabric: [
    // Columns of the repeat, from L4 on: 0 1 2 3 0 1 2 3. The edges knit contrast.
    'chalk L4–L3, slate L2–L1, chalk R1–R2, slate R3, chalk R4',
    'chalk L5, slate L4, chalk L3–L2, slate L1–R1, chalk R2–R3, slate R4, chalk R5',
    'chalk L5, slate L4–L3, chalk L2–L1, slate R1–R2, chalk R3–R5',
    'chalk L4, slate L3–L2, chalk L1–R1, slate R2–R3, chalk R4–R5',
    'slate L4–R5',
  ],
};
