/** Laws of the strands of any fabric, rows all in contrast among them, each needle looked at by itself. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carriesOf } from '@shared/strands/index.ts';
import { drawnFabric } from '../unit/strands/drawn-fabric.ts';

const WIDTH = 8;

/** Lines of main, two contrasts and, often, of one yarn alone. */
const anyLines = fc.array(
  fc.oneof(
    fc.constantFrom('.', 'X', 'O').map((cell) => cell.repeat(WIDTH)),
    fc.string({ unit: fc.constantFrom('X', 'O'), minLength: WIDTH, maxLength: WIDTH }),
    fc.string({ unit: fc.constantFrom('.', 'X', 'O'), minLength: WIDTH, maxLength: WIDTH }),
  ),
  { minLength: 1, maxLength: 12 },
);

describe('main', () => {
  it('lies behind every contrast stitch of a row that has a main stitch, and nowhere on a row that has none', () => {
    let waited = 0;
    fc.assert(
      fc.property(anyLines, (lines) => {
        const { laid } = drawnFabric(lines);
        [...lines].reverse().forEach((line, index) => {
          const contrast = [...line].filter((cell) => cell !== '.').length;
          const floated = (laid.rows[index]?.floats ?? [])
            .filter(({ strand }) => strand.role === 'main')
            .reduce((sum, { stitches }) => sum + stitches, 0);
          expect(floated).toBe(contrast === WIDTH ? 0 : contrast);
          expect(laid.rows[index]?.isMainKnitted).toBe(contrast < WIDTH);
          waited += Number(contrast === WIDTH);
        });
        const lain = lines.reduce((sum, line) => {
          const contrast = [...line].filter((cell) => cell !== '.').length;
          return sum + (contrast === WIDTH ? 0 : contrast);
        }, 0);
        expect(laid.totals[0]?.floated[0] ?? 0).toBe(lain);
      }),
      { numRuns: 500 },
    );
    expect(waited).toBeGreaterThan(500);
  });

  it('is carried over the rows it waits on: up its edge after an even number, across after an odd one', () => {
    fc.assert(
      fc.property(anyLines, fc.constantFrom('left' as const, 'right' as const), (lines, startSide) => {
        const { laid, laying } = drawnFabric(lines, { startSide });
        const found = carriesOf(laid, laying)
          .flatMap((row) => row ?? [])
          .filter(({ strand }) => strand.role === 'main');
        const knitted = [...lines].reverse().flatMap((line, index) => (line.includes('.') ? [index + 1] : []));
        const expected = knitted.flatMap((row, at) => {
          const before = knitted[at - 1];
          if (before === undefined || row - before === 1) return [];
          return [{ toRow: row, rows: row - before, stitches: (row - before) % 2 === 1 ? 0 : WIDTH - 1 }];
        });
        expect(found.map(({ toRow, rows, stitches }) => ({ toRow, rows, stitches }))).toEqual(expected);
      }),
      { numRuns: 500 },
    );
  });
});
