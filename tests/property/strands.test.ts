/** Laws of the strands of any fabric, rows all in contrast among them, each needle looked at by itself. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carriesOf, type Carry, type Cut } from '@shared/strands/index.ts';
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
    // Cut where that is too far up; common practice, no source: at most 8 rows or 25 mm up. Rows of 5 mm and of 2.5 mm.
    const anyGauge = fc.constantFrom({ rows: 20, most: 5 }, { rows: 40, most: 8 });
    let cut = 0;
    fc.assert(
      fc.property(anyLines, fc.constantFrom('left' as const, 'right' as const), anyGauge, (lines, startSide, gauge) => {
        const { laid, laying } = drawnFabric(lines, { startSide, gauge: { stitches: 20, rows: gauge.rows } });
        const { carries, cuts } = carriesOf(laid, laying);
        const knitted = [...lines].reverse().flatMap((line, index) => (line.includes('.') ? [index + 1] : []));
        const ways = knitted.flatMap((row, at) => {
          const before = knitted[at - 1];
          return before === undefined || row - before === 1 ? [] : [{ toRow: row, rows: row - before }];
        });
        const ofMain = <Way extends Carry | Cut>(found: readonly (readonly Way[] | undefined)[]): Way[] =>
          found.flatMap((row) => row ?? []).filter(({ strand }) => strand.role === 'main');
        expect(ofMain(carries).map(({ toRow, rows, stitches }) => ({ toRow, rows, stitches }))).toEqual(
          ways
            .filter(({ rows }) => rows <= gauge.most)
            .map((way) => ({ ...way, stitches: way.rows % 2 === 1 ? 0 : WIDTH - 1 })),
        );
        expect(ofMain(cuts).map(({ toRow, rows }) => ({ toRow, rows }))).toEqual(
          ways.filter(({ rows }) => rows > gauge.most),
        );
        for (const { rows, mm } of ofMain(cuts)) expect(mm).toBeCloseTo((rows * 100) / gauge.rows, 9);
        cut += ofMain(cuts).length;
      }),
      { numRuns: 1500, seed: 63 },
    );
    expect(cut).toBeGreaterThan(5);
  });
});
