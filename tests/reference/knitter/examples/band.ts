/** An isolated motif of three rows, set up in row 3, wrapped at both edges. */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

const PLAIN = 'L4–R4, plain, off, slate, none';
const PATTERN = 'L4–R4, pattern, selecting, slate, chalk';

export const band: Example = {
  machine: MACHINE,
  patterns: { 'band-1': [{ motif: 'diamond', width: 3, rows: [[1], [0, 1, 2], [1]] }] },
  order: [
    stop(0, 'left', PLAIN, [
      { act: 'cast-on', needles: ['L4', 'R4'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      { act: 'tension', part: 'body', text: '7' },
      { act: 'weights', do: 'hang' },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stretch(2, 2, 'right', PLAIN),
    stop(2, 'left', 'L4–R4, plain, selecting, slate, none', [
      {
        act: 'first-needles',
        pattern: 'band-1',
        row: 4,
        groups: [{ needle: 'L2', last: 'R1', motif: 'diamond', copies: 1, mirrored: false }],
      },
      { act: 'end-needles', on: false },
      { act: 'selecting', on: true },
    ]),
    stop(3, 'right', PATTERN, [
      { act: 'tension', part: 'pattern', text: '8' },
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
      { act: 'check', forward: 1, first: 'L1', last: 'L1' },
      { act: 'strand', id: 'right', at: 'start', mm: 200 },
      { act: 'wrap', needle: 'R1', edge: 'right', yarn: 'slate', strand: 'right' },
    ]),
    stop(4, 'left', PATTERN, [
      { act: 'check', forward: 3, first: 'L2', last: 'R1' },
      { act: 'strand', id: 'left', at: 'start', mm: 150 },
      { act: 'wrap', needle: 'L3', edge: 'left', yarn: 'slate', strand: 'left' },
    ]),
    stop(5, 'right', PATTERN, [
      { act: 'strand', id: 'left', at: 'end' },
      { act: 'check', forward: 1, first: 'L1', last: 'L1' },
      { act: 'wrap', needle: 'R1', edge: 'right', yarn: 'slate', strand: 'right' },
    ]),
    stop(6, 'left', PLAIN, [
      { act: 'carriage', set: 'plain' },
      { act: 'selecting', on: false },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' },
      { act: 'strand', id: 'right', at: 'end' },
      { act: 'tension', part: 'body', text: '7' },
    ]),
    stretch(8, 8, 'right', PLAIN),
    end(8, 'left', [
      { act: 'weights', do: 'off' },
      { act: 'finish', how: 'cast-off', needles: ['L4', 'R4'], startsAt: 'L4', mm: 160 },
      { act: 'unthread', feeder: 1, yarn: 'slate', waitsAt: 'cut' },
    ]),
  ],
  fabric: [
    ...Array.from({ length: 3 }, () => 'slate L4–R4'),
    'slate L4–L2, chalk L1, slate R1–R4',
    'slate L4–L3, chalk L2–R1, slate R2–R4',
    'slate L4–L2, chalk L1, slate R1–R4',
    ...Array.from({ length: 2 }, () => 'slate L4–R4'),
  ],
};
