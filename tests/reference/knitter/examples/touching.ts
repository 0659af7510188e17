/** Two groups right beside each other, a ball for each: their yarns are crossed on both rows. */
import { end, MACHINE, stop, type Example } from './example.ts';

const PATTERN = 'L4–R4, pattern, selecting, slate, none';

export const touching: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: {
    'band-1': [
      {
        motif: 'gull',
        width: 2,
        rows: [
          [0, 1],
          [0, 1],
        ],
      },
      {
        motif: 'gull',
        width: 2,
        rows: [
          [0, 1],
          [0, 1],
        ],
      },
    ],
  },
  order: [
    stop(0, 'left', 'L4–R4, plain, selecting, slate, none', [
      { act: 'cast-on', needles: ['L4', 'R4'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      {
        act: 'first-needles',
        pattern: 'band-1',
        row: 2,
        groups: [
          { needle: 'L2', last: 'L1', motif: 'gull', copies: 1, mirrored: false },
          { needle: 'R1', last: 'R2', motif: 'gull', copies: 1, mirrored: false },
        ],
      },
      { act: 'selecting', on: true },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stop(1, 'right', PATTERN, [
      { act: 'carriage', set: 'pattern' },
      { act: 'lay', ball: 'right', yarn: 'chalk', needles: [['R1', 'R2']], crosses: [] },
      { act: 'lay', ball: 'left', yarn: 'chalk', needles: [['L2', 'L1']], crosses: ['right'] },
    ]),
    stop(2, 'left', PATTERN, [
      { act: 'lay', ball: 'left', yarn: 'chalk', needles: [['L2', 'L1']], crosses: [] },
      { act: 'lay', ball: 'right', yarn: 'chalk', needles: [['R1', 'R2']], crosses: ['left'] },
    ]),
    stop(3, 'right', 'L4–R4, plain, off, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'selecting', on: false },
      { act: 'cut', ball: 'left', yarn: 'chalk', mm: 150 },
      { act: 'cut', ball: 'right', yarn: 'chalk', mm: 150 },
    ]),
    end(4, 'left', [{ act: 'finish', how: 'cast-off', needles: ['L4', 'R4'], startsAt: 'left', mm: 200 }]),
  ],
  fabric: [
    'slate L4–R4',
    'slate L4–L3, chalk L2–R2, slate R3–R4',
    'slate L4–L3, chalk L2–R2, slate R3–R4',
    'slate L4–R4',
  ],
};
