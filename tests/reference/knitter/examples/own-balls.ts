/** Two groups with a ball each, and a third yarn in their second row: all contrast of a row is laid by hand. */
import { end, MACHINE, stop, type Example } from './example.ts';

const PATTERN = 'L5–R5, pattern, selecting, slate, none';

export const ownBalls: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: {
    'band-1': [
      { motif: 'gull', width: 2, rows: [[0, 1], [0]] },
      { motif: 'gull', width: 2, rows: [[0, 1], [0]] },
    ],
  },
  order: [
    stop(0, 'left', 'L5–R5, plain, selecting, slate, none', [
      { act: 'cast-on', needles: ['L5', 'R5'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      {
        act: 'first-needles',
        pattern: 'band-1',
        row: 2,
        groups: [
          { needle: 'L4', last: 'L3', motif: 'gull', copies: 1, mirrored: false },
          { needle: 'R3', last: 'R4', motif: 'gull', copies: 1, mirrored: true },
        ],
      },
      { act: 'selecting', on: true },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stop(1, 'right', PATTERN, [
      { act: 'carriage', set: 'pattern' },
      { act: 'check', forward: 4, first: 'L4', last: 'R4' },
      { act: 'strand', id: 'a', at: 'start', mm: 150 },
      { act: 'strand', id: 'b', at: 'start', mm: 150 },
      { act: 'wrap', needle: 'L2', edge: 'right', yarn: 'slate', strand: 'a' },
      { act: 'strand', id: 'a', at: 'end' },
      { act: 'wrap', needle: 'R5', edge: 'right', yarn: 'slate', strand: 'b' },
      { act: 'lay', ball: 'right', yarn: 'chalk', needles: [['R3', 'R4']] },
      { act: 'lay', ball: 'left', yarn: 'chalk', needles: [['L4', 'L3']] },
    ]),
    stop(2, 'left', PATTERN, [
      { act: 'cut', ball: 'right', yarn: 'chalk', mm: 150 },
      { act: 'strand', id: 'b', at: 'end' },
      { act: 'check', forward: 2, first: 'L4', last: 'R4' },
      { act: 'lay', ball: 'left', yarn: 'chalk', needles: [['L4', 'L4']] },
      { act: 'lay', ball: 'third', yarn: 'moss', needles: [['R4', 'R4']] },
    ]),
    stop(3, 'right', 'L5–R5, plain, off, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'selecting', on: false },
      { act: 'cut', ball: 'left', yarn: 'chalk', mm: 150 },
      { act: 'cut', ball: 'third', yarn: 'moss', mm: 150 },
    ]),
    end(4, 'left', [{ act: 'finish', how: 'cast-off', needles: ['L5', 'R5'], startsAt: 'left', mm: 200 }]),
  ],
  fabric: [
    'slate L5–R5',
    'slate L5, chalk L4–L3, slate L2–R2, chalk R3–R4, slate R5',
    'slate L5, chalk L4, slate L3–R3, moss R4, slate R5',
    'slate L5–R5',
  ],
};
