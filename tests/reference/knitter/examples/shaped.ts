/** Increases at both edges, stitches cast off and on where the carriage stands, decreases. */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

const PLAIN = 'plain, off, slate, none';

export const shaped: Example = {
  machine: { ...MACHINE, weights: false },
  patterns: {},
  order: [
    stop(0, 'left', `L3–R3, ${PLAIN}`, [
      { act: 'cast-on', needles: ['L3', 'R3'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stretch(2, 2, 'right', `L3–R3, ${PLAIN}`),
    stop(2, 'left', `L4–R4, ${PLAIN}`, [
      { act: 'increase', edge: 'left', needles: ['L4'] },
      { act: 'increase', edge: 'right', needles: ['R4'] },
    ]),
    stop(3, 'right', `L4–R2, ${PLAIN}`, [{ act: 'cast-off', edge: 'right', needles: ['R3', 'R4'] }]),
    stop(4, 'left', `L2–R2, ${PLAIN}`, [{ act: 'cast-off', edge: 'left', needles: ['L4', 'L3'] }]),
    stretch(6, 6, 'right', `L2–R2, ${PLAIN}`),
    stop(6, 'left', `L5–R2, ${PLAIN}`, [{ act: 'cast-on-more', edge: 'left', needles: ['L5', 'L3'] }]),
    stop(7, 'right', `L5–R5, ${PLAIN}`, [{ act: 'cast-on-more', edge: 'right', needles: ['R3', 'R5'] }]),
    stretch(9, 9, 'left', `L5–R5, ${PLAIN}`),
    stop(9, 'right', `L4–R5, ${PLAIN}`, [{ act: 'decrease', edge: 'left', needles: ['L5'] }]),
    stop(10, 'left', `L4–R4, ${PLAIN}`, [{ act: 'decrease', edge: 'right', needles: ['R5'] }]),
    end(11, 'right', [{ act: 'finish', how: 'cast-off', needles: ['L4', 'R4'], startsAt: 'right', mm: 160 }]),
  ],
  fabric: [
    'slate L3–R3',
    'slate L3–R3',
    'slate L4–R4',
    'slate L4–R2',
    'slate L2–R2',
    'slate L2–R2',
    'slate L5–R2',
    'slate L5–R5',
    'slate L5–R5',
    'slate L4–R5',
    'slate L4–R4',
  ],
};
