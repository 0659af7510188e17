/** What a run of the bench is told of an earlier one. */
import { describe, expect, it } from 'vitest';
import type { Bar } from '../../bench/bar.ts';
import { movedLines, resultsFromText, resultsToText } from '../../bench/results.ts';

const ABOUT = { machine: 'a machine', node: 'v20.0.0', commit: 'abc1234', at: '2026-03-04T05:06:07.000Z', load: 0.5 };

function bar(name: string, ratio: number): Bar {
  return { name, kind: 'at most', limit: 2, ratio, ours: ratio * 10, against: 10 };
}

describe('an earlier run of the bench', () => {
  const before = resultsFromText(resultsToText(ABOUT, [bar('pen', 1), bar('hover', 2), bar('start', 3)]));

  it('is read back as it was written', () => {
    expect(before).toMatchObject({ ...ABOUT, bars: [{ name: 'pen', ratio: 1, limit: 2, ours: 10 }, {}, {}] });
  });

  it('tells what moved by more than a fifth either way, the most first', () => {
    const now = [bar('pen', 1.25), bar('hover', 1), bar('start', 3.5)];
    expect(movedLines(before, now, false)).toEqual([
      'faster    hover: 2.00 × before, 1.00 × now',
      'slower    pen: 1.00 × before, 1.25 × now',
    ]);
  });

  it('names what only one of both has, but of a part of the bench nothing that was not measured', () => {
    const now = [bar('pen', 1), bar('purl side', 1)];
    expect(movedLines(before, now, true)).toEqual(['new       purl side: 1.00 ×']);
    expect(movedLines(before, now, false)).toEqual([
      'new       purl side: 1.00 ×',
      'gone      hover: 2.00 × before',
      'gone      start: 3.00 × before',
    ]);
  });

  it.each(['', '{}', '{"bars": 3}', 'pen 1.0'])('is refused where it is none: %j', (text) => {
    expect(() => resultsFromText(text)).toThrow('not one that a run of the bench has written');
  });
});
