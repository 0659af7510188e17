/** A hem folded over a turning row with eyelets and joined to its open loops. */
import { end, MACHINE, stop, stretch, type Example } from './example.ts';

const PLAIN = 'L2–R2, plain, off, slate, none';

export const hem: Example = {
  machine: MACHINE,
  patterns: {},
  order: [
    stop(0, 'right', PLAIN, [
      { act: 'cast-on', needles: ['L2', 'R2'], yarn: 'slate', how: 'open', wasteRows: 8 },
      { act: 'counter', reading: 0 },
      { act: 'tension', part: 'facing', text: '6' },
      { act: 'weights', do: 'hang' },
      { act: 'thread', feeder: 1, yarn: 'slate' },
    ]),
    stretch(2, 3, 'left', PLAIN),
    stop(3, 'left', PLAIN, [
      { act: 'tension', part: 'turning row', text: '9' },
      { act: 'eyelets', needles: ['L1'] },
    ]),
    stop(4, 'right', PLAIN, [
      { act: 'weights', do: 'move' },
      { act: 'tension', part: 'outside', text: '7' },
    ]),
    stretch(6, 7, 'left', PLAIN),
    stop(7, 'left', PLAIN, [
      { act: 'weights', do: 'off' },
      { act: 'hang-hem', needles: ['L2', 'R2'], loops: 4, edgeLoop: 'left' },
      { act: 'weights', do: 'hang' },
      { act: 'tension', part: 'joining row', text: '8' },
    ]),
    stop(8, 'right', PLAIN, [{ act: 'remove-waste' }, { act: 'tension', part: 'body', text: '7' }]),
    stretch(10, 10, 'left', PLAIN),
    end(10, 'right', [
      { act: 'unthread', feeder: 1, yarn: 'slate', waitsAt: 'cut', mm: 80 },
      { act: 'weights', do: 'off' },
      { act: 'finish', how: 'cast-off', needles: ['L2', 'R2'], startsAt: 'right', mm: 80 },
    ]),
  ],
  fabric: Array.from({ length: 10 }, () => 'slate L2–R2'),
};
