/** Strands of a fabric of which rows were painted: laid again on these alone, they lie as if all were laid. */
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { layAgain, layStrands, type LaidStrands } from '@shared/strands/index.ts';
import { drawnFabric } from '../unit/strands/drawn-fabric.ts';

const WIDTH = 8;

/** Many rows of main alone, so that a strand ends below a row that is painted, or knits on that row alone. */
const anyLine = fc.oneof(
  { weight: 3, arbitrary: fc.constant('.'.repeat(WIDTH)) },
  { weight: 1, arbitrary: fc.constantFrom('X', 'O').map((cell) => cell.repeat(WIDTH)) },
  {
    weight: 2,
    arbitrary: fc.string({ unit: fc.constantFrom('.', 'X', 'O'), minLength: WIDTH, maxLength: WIDTH }),
  },
);

const anyPainting = fc.record({
  lines: fc.array(anyLine, { minLength: 12, maxLength: 24 }),
  painted: fc.array(fc.tuple(fc.nat(), anyLine), { minLength: 1, maxLength: 4 }),
  turn: fc.nat({ max: 24 }),
});

/** Totals without what else they may hold. */
function told(laid: LaidStrands): LaidStrands {
  return { ...laid, totals: laid.totals.map(({ gauge, stitches, floated }) => ({ gauge, stitches, floated })) };
}

it('Strands that are laid again on painted rows lie as if all were laid', () => {
  const seen = { again: 0, longer: 0, shorter: 0 };
  fc.assert(
    fc.property(anyPainting, ({ lines, painted, turn }) => {
      const gauges = [
        { first: 1, last: turn, gauge: { stitches: 20, rows: 28 } },
        { first: turn + 1, last: lines.length + turn, gauge: { stitches: 30, rows: 40 } },
      ].filter(({ first, last }) => first <= last);
      const settings = { gauges, floatLimit: { stitches: 3, mm: 12 } };
      const before = drawnFabric(lines, settings);
      const after = [...lines];
      for (const [row, line] of painted) after[row % after.length] = line;
      const { fabric, laying } = drawnFabric(after, settings);
      // The topmost line is the last row.
      const rows = after.flatMap((line, at) => (line === lines[at] ? [] : [lines.length - at])).reverse();
      const again = layAgain(fabric, laying, before.laid, rows);
      if (!again) return;
      const [laid, fresh] = [told(again), told(layStrands(fabric, laying))];
      if (!isDeepStrictEqual(laid, fresh)) expect(laid).toEqual(fresh);
      seen.again++;
      const change = again.lastRow.map((last, strand) => last - (before.laid.lastRow[strand] as number));
      if (change.some((rows) => rows > 0)) seen.longer++;
      if (change.some((rows) => rows < 0)) seen.shorter++;
    }),
    { numRuns: 2000 },
  );
  // Otherwise nothing was laid again that could be wrong.
  expect(seen.again).toBeGreaterThan(500);
  expect(Math.min(seen.longer, seen.shorter)).toBeGreaterThan(20);
});
