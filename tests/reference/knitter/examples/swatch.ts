/** Four plain rows on six stitches. */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

export const swatch: Example = {
  machine: MACHINE,
  patterns: {},
  order: [
    stop(0, 'left', 'L3–R3, plain, off, slate, none', [
      { act: 'cast-on', needles: ['L3', 'R3'], yarn: 'slate', how: 'closed', wasteRows: 0 },
      { act: 'counter', reading: 0 },
      { act: 'tension', part: 'body', text: '7' },
      { act: 'weights', do: 'hang' },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stretch(2, 3, 'right', 'L3–R3, plain, off, slate, none'),
    stop(3, 'right', 'L3–R3, plain, off, slate, none', [{ act: 'tension', part: 'last row', text: '9' }]),
    end(4, 'left', [
      { act: 'weights', do: 'off' },
      { act: 'finish', how: 'cast-off', needles: ['L3', 'R3'], startsAt: 'left', mm: 120 },
    ]),
  ],
  fabric: Array.from({ length: 4 }, () => 'slate L3–R3'),
};
