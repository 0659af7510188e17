import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNeedle, regularRuns, type Run, type RunsTold, type Slot } from '@shared/bed/index.ts';
import { words } from '@shared/words/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';

const run = (first: number, last = first): Run => ({ first: first as Slot, last: last as Slot });

/** Every needle that is told, read as a knitter would: what comes again is moved on until its end is reached. */
function needlesTold(shortened: readonly RunsTold[]): number[] {
  return shortened.flatMap((part) => {
    const each = ({ first, last }: Run, by: number): number[] =>
      Array.from({ length: last - first + 1 }, (_, at) => first + at + by);
    if (part.kind === 'runs') return part.runs.flatMap((one) => each(one, 0));
    const found: number[] = [];
    for (let by = 0; (part.runs[0] as Run).first + by <= part.last; by += part.every) {
      for (const one of part.runs) if (one.first + by <= part.last) found.push(...each(one, by));
    }
    return found;
  });
}

const anyRuns = fc
  .record({
    unit: fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 })), {
      minLength: 1,
      maxLength: 6,
    }),
    times: fc.integer({ min: 1, max: 12 }),
    before: fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 })), { maxLength: 5 }),
    start: fc.integer({ min: -60, max: 10 }),
  })
  .map(({ unit, times, before, start }) => {
    let at = start;
    return [...before, ...Array.from({ length: times }, () => unit).flat(), ...before].map(([knitted, blank]): Run => {
      const found = run(at, at + knitted - 1);
      at += knitted + blank;
      return found;
    });
  });

describe('runs of needles that come again', () => {
  it('are told once, as far as they go', () => {
    // L12, L10, …, R1, R3: every 2 needles up to R3; a run beside them stands for itself.
    const every = [-12, -10, -8, -6, -4, -2, 0, 2].map((first) => run(first));
    expect(regularRuns(every)).toEqual([{ kind: 'repeat', runs: [run(-12)], every: 2, last: 2 }]);
    expect(regularRuns([...every, run(7, 9)])).toEqual([
      { kind: 'repeat', runs: [run(-12)], every: 2, last: 2 },
      { kind: 'runs', runs: [run(7, 9)] },
    ]);
    expect(regularRuns(every.slice(0, 7))).toEqual([{ kind: 'runs', runs: every.slice(0, 7) }]);
    expect(regularRuns([])).toEqual([]);
  });

  it('may break off in the midst of what comes again', () => {
    const unit = (at: number): Run[] => [run(at, at + 1), run(at + 3)];
    const runs = [...unit(0), ...unit(8), ...unit(16), ...unit(24), run(32, 33)];
    expect(regularRuns(runs)).toEqual([{ kind: 'repeat', runs: unit(0), every: 8, last: 33 }]);
  });

  it('name the same needles as each by itself', () => {
    let repeats = 0;
    fc.assert(
      fc.property(anyRuns, (runs) => {
        const shortened = regularRuns(runs);
        expect(needlesTold(shortened)).toEqual(needlesTold([{ kind: 'runs', runs }]));
        repeats += Number(shortened.some(({ kind }) => kind === 'repeat'));
      }),
      { numRuns: 1000 },
    );
    expect(repeats).toBeGreaterThan(200);
  });

  it('are said so on the sheet, where there are many', () => {
    const { runs } = sheetWords.rowList;
    const every = Array.from({ length: 20 }, (_, at) => run(-20 + 2 * at));
    expect(runs(every)).toBe('L20, and so on every 2 needles up to R19');
    expect(runs([...every, run(20, 21), run(25)])).toBe('L20, and so on every 2 needles up to R19; R21–R22, R26');
    expect(runs(every.slice(0, 12))).toBe(every.slice(0, 12).map(words.numbers.run).join(', '));
    expect(parseNeedle('R19')).toBe((every.at(-1) as Run).last);
  });
});
