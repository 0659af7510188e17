/** A machine that chooses nothing: needles are pushed forward for each row. Picked up, and left on waste yarn. */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

const PATTERN = 'L3–R3, pattern, off, slate, chalk';

export const byHand: Example = {
  machine: { ...MACHINE, chooses: 'by-hand', endNeedles: 'none', weights: false },
  patterns: {},
  order: [
    stop(0, 'left', 'L3–R3, plain, off, slate, none', [
      { act: 'cast-on', needles: ['L3', 'R3'], yarn: 'slate', how: 'picked-up', wasteRows: 0 },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stop(1, 'right', PATTERN, [
      { act: 'push-forward', needles: ['L1', 'R1'] },
      { act: 'carriage', set: 'pattern' },
      { act: 'thread', feeder: 2, yarn: 'chalk' },
      { act: 'check', forward: 2, first: 'L1', last: 'R1' },
    ]),
    stop(2, 'left', PATTERN, [{ act: 'push-forward', needles: ['L2', 'L1'] }]),
    stop(3, 'right', 'L3–R3, plain, off, slate, none', [
      { act: 'carriage', set: 'plain' },
      { act: 'unthread', feeder: 2, yarn: 'chalk', waitsAt: 'cut' },
    ]),
    stretch(5, 5, 'left', 'L3–R3, plain, off, slate, none'),
    end(5, 'right', [
      { act: 'unthread', feeder: 1, yarn: 'slate', waitsAt: 'cut' },
      { act: 'finish', how: 'waste-yarn', needles: ['L3', 'R3'], startsAt: 'right' },
    ]),
  ],
  fabric: [
    'slate L3–R3',
    'slate L3–L2, chalk L1–R1, slate R2–R3',
    'slate L3, chalk L2–L1, slate R1–R3',
    'slate L3–R3',
    'slate L3–R3',
  ],
};
