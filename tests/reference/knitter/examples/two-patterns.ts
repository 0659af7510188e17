/**
 * An all-over with end needles on and a band without them, one plain row
 * between: selecting stays on over it. Another all-over touches the band.
 * Floats of the band are hooked up.
 */
import { end, MACHINE, stop, type Example } from './example.ts';

const PATTERN = 'L4–R4, pattern, selecting, slate, chalk';

export const twoPatterns: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: {
    'fill-1': [{ motif: 'dots', width: 2, rows: [[0], [1]], isEverywhere: true }],
    'fill-2': [{ motif: 'dots', width: 2, rows: [[1]], isEverywhere: true }],
    'band-1': [
      {
        motif: 'gate',
        width: 6,
        rows: [
          [0, 5],
          [0, 5],
        ],
      },
    ],
  },
  order: [
    stop(0, 'left', 'L4–R4, plain, selecting, slate, none', [
      { act: 'cast-on', needles: ['L4', 'R4'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      {
        act: 'first-needles',
        pattern: 'fill-1',
        row: 2,
        groups: [{ needle: 'L3', last: 'R3', motif: 'dots', copies: 3, mirrored: false }],
      },
      { act: 'end-needles', on: true },
      { act: 'selecting', on: true },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stop(1, 'right', PATTERN, [
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
    ]),
    stop(2, 'left', PATTERN, []),
    stop(3, 'right', 'L4–R4, plain, selecting, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'R4' },
      {
        act: 'first-needles',
        pattern: 'band-1',
        row: 5,
        groups: [{ needle: 'L3', last: 'R3', motif: 'gate', copies: 1, mirrored: false }],
      },
      { act: 'end-needles', on: false },
    ]),
    stop(4, 'left', PATTERN, [
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
      { act: 'check', forward: 2, first: 'L3', last: 'R3' },
    ]),
    stop(5, 'right', PATTERN, [
      { act: 'hook-up', needle: 'R1', yarn: 'chalk', float: ['L2', 'R2'] },
      {
        act: 'first-needles',
        pattern: 'fill-2',
        row: 7,
        groups: [{ needle: 'L3', last: 'R3', motif: 'dots', copies: 3, mirrored: true }],
      },
      { act: 'end-needles', on: true },
    ]),
    stop(6, 'left', PATTERN, [{ act: 'hook-up', needle: 'L1', yarn: 'chalk', float: ['L2', 'R2'] }]),
    stop(7, 'right', 'L4–R4, plain, off, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' },
      { act: 'selecting', on: false },
    ]),
    end(8, 'left', [{ act: 'finish', how: 'cast-off', needles: ['L4', 'R4'], startsAt: 'left', mm: 160 }]),
  ],
  fabric: [
    'slate L4–R4',
    'chalk L4–L3, slate L2, chalk L1, slate R1, chalk R2, slate R3, chalk R4',
    'chalk L4, slate L3, chalk L2, slate L1, chalk R1, slate R2, chalk R3–R4',
    'slate L4–R4',
    'slate L4, chalk L3, slate L2–R2, chalk R3, slate R4',
    'slate L4, chalk L3, slate L2–R2, chalk R3, slate R4',
    'chalk L4–L3, slate L2, chalk L1, slate R1, chalk R2, slate R3, chalk R4',
    'slate L4–R4',
  ],
};
