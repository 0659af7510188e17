import { describe, expect, it } from 'vitest';
import { EXAMPLES, written, type Example } from './examples/index.ts';
import { band } from './examples/band.ts';
import { hem } from './examples/hem.ts';
import { knit, type Knitted } from './index.ts';

export function knitted({ order, machine, patterns }: Example): Knitted {
  const done = knit(order, { machine, patterns });
  if (!done.ok) throw new Error(done.why);
  return done;
}

describe('the simulated knitter', () => {
  it.each(Object.entries(EXAMPLES))('knits %s', (_, example) => {
    const { fabric } = knitted(example);
    expect(fabric.map(({ runs }) => written(runs))).toEqual(example.fabric);
    expect(fabric.map(({ row }) => row)).toEqual(example.fabric.map((_, index) => index + 1));
  });

  it('hangs a hem one loop to a needle, with the half loop of one edge', () => {
    const { hem: hung, start } = knitted(hem);
    expect(start).toBe('joined');
    expect(hung).toEqual([
      {
        reading: 7,
        loops: [
          { needle: 'L2', loop: { half: 'left' } },
          { needle: 'L1', loop: { between: ['L2', 'L1'] } },
          { needle: 'R1', loop: { between: ['L1', 'R1'] } },
          { needle: 'R2', loop: { between: ['R1', 'R2'] } },
        ],
      },
    ]);
  });

  it('knows the tension of every row', () => {
    expect(
      knitted(hem)
        .tensions.map(({ text }) => text)
        .join(' '),
    ).toBe('6 6 6 9 7 7 7 8 7 7');
  });

  it('counts both ends of every yarn and strand', () => {
    const ends = knitted(band).ends.map(({ yarn, of, end, reading }) => `${yarn} ${of} ${end} ${reading}`);
    expect(ends.sort()).toEqual([
      'chalk feeder first 3',
      'chalk feeder last 6',
      'slate feeder first 0',
      'slate feeder last 8',
      'slate strand first 3',
      'slate strand first 4',
      'slate strand last 5',
      'slate strand last 6',
    ]);
  });
});
