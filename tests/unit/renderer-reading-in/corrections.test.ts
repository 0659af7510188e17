/** What a person settles in a chart that is being read stays settled while the reading around it changes. */
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import type { ChartReading } from '@shared/reading/index.ts';
import { corrected, nextDoubtful } from '../../../src-renderer/reading-in/chart/corrections.ts';

/** Two rows of three; the cells whose numbers are given are doubtful. */
function reading(colours: readonly string[], ...doubtful: number[]): ChartReading {
  return {
    grid: gridFromText(['.X.', 'X..'], '.X2'),
    colours,
    ground: 0,
    confidence: new Float32Array(6).fill(0.9),
    doubtful: Uint8Array.from({ length: 6 }, (_, cell) => (doubtful.includes(cell) ? 1 : 0)),
  };
}

describe('a cell that was settled', () => {
  it('has its yarn and is doubtful no more, and the reading stays as it was', () => {
    const read = reading(['#ffffff', '#aa2200'], 1, 4);
    const after = corrected(read, [{ cell: 1, colour: '#aa2200' }]);
    expect(gridToText(after.grid, '.X')).toEqual(['.X.', 'XX.']);
    expect([...after.doubtful]).toEqual([0, 0, 0, 0, 1, 0]);
    expect(gridToText(read.grid, '.X')).toEqual(['.X.', 'X..']);
  });

  it('is as sure as can be: no other photo of it says better', () => {
    const read = reading(['#ffffff', '#aa2200'], 1, 4);
    expect(corrected(read, [{ cell: 1, colour: '#aa2200' }]).confidence[1]).toBe(1);
    expect(read.confidence[1]).toBeCloseTo(0.9);
  });

  it('keeps its yarn when the yarns come back in another order and a little different', () => {
    const after = corrected(reading(['#fdfdfb', '#20409a', '#a92403']), [{ cell: 2, colour: '#aa2200' }]);
    expect(after.grid.cells[2]).toBe(2);
  });
});

describe('walking through doubtful cells', () => {
  const read = reading(['#ffffff', '#aa2200'], 1, 4);

  it.each([
    { from: null, step: 1, to: 1 },
    { from: 1, step: 1, to: 4 },
    { from: 4, step: 1, to: 1 },
    { from: null, step: -1, to: 4 },
    { from: 1, step: -1, to: 4 },
    { from: 3, step: -1, to: 1 },
  ] as const)('goes from $from by $step to $to, round and round', ({ from, step, to }) => {
    expect(nextDoubtful(read, from, step)).toBe(to);
  });

  it('ends where none is left', () => {
    expect(nextDoubtful(reading(['#ffffff', '#aa2200']), 2, 1)).toBeNull();
  });
});
