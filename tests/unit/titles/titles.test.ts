import { describe, expect, it } from 'vitest';
import { compareTitles } from '../../titles/compare.ts';

const ONE = 'unit/bed/slots.test.ts › a needle › has a label';
const OTHER = 'unit/bed/slots.test.ts › a needle › is read';
const ALL_WELL = { unaccounted: [], missing: [], idle: [] };

describe('titles of tests', () => {
  it('may come, in any order', () => {
    expect(compareTitles([ONE, OTHER], ['e2e/new.spec.ts › opens', OTHER, ONE], [])).toEqual(ALL_WELL);
  });

  it('do not go without a line that says why', () => {
    expect(compareTitles([ONE, OTHER], [ONE], [])).toEqual({ ...ALL_WELL, unaccounted: [OTHER] });
    expect(compareTitles([ONE, OTHER], [ONE], [{ old: OTHER, now: null, why: ' ' }]).unaccounted).toEqual([OTHER]);
    expect(compareTitles([ONE, OTHER], [ONE], [{ old: OTHER, now: null, why: 'was the same as …' }])).toEqual(ALL_WELL);
  });

  it('that stand twice stay twice', () => {
    expect(compareTitles([ONE, ONE], [ONE], []).unaccounted).toEqual([ONE]);
    expect(compareTitles([ONE, ONE], [ONE, ONE], [])).toEqual(ALL_WELL);
  });

  it('that are called something else are there under the new name', () => {
    const moved = [{ old: OTHER, now: 'unit/bed/slots.test.ts › a label › is read', why: 'about labels' }];
    expect(compareTitles([ONE, OTHER], [ONE, 'unit/bed/slots.test.ts › a label › is read'], moved)).toEqual(ALL_WELL);
    expect(compareTitles([ONE, OTHER], [ONE], moved).missing).toEqual(['unit/bed/slots.test.ts › a label › is read']);
  });

  it('move with their file by one line', () => {
    const moved = [{ old: 'unit/bed/slots.test.ts', now: 'unit/needles.test.ts', why: 'named by what it tests' }];
    const now = ['unit/needles.test.ts › a needle › has a label', 'unit/needles.test.ts › a needle › is read'];
    expect(compareTitles([ONE, OTHER], now, moved)).toEqual(ALL_WELL);
    expect(compareTitles([ONE, OTHER], now.slice(0, 1), moved).missing).toEqual(now.slice(1));
  });

  it('that are there need no line', () => {
    const line = { old: ONE, now: null, why: 'gone' };
    expect(compareTitles([ONE], [ONE], [line])).toEqual({ ...ALL_WELL, idle: [line] });
  });
});
