/** What the rows of a pattern become when they are said in another way: they stay where they are as far as that can be said. */
import { describe, expect, it } from 'vitest';
import { firstRowAt, rowsOfExtent, sectionsOf, TO_THE_TOP, type Extent, type Position } from '@shared/piece/index.ts';
import { START_PIECE } from '@shared/project/index.ts';
import {
  asStart,
  endingBy,
  endOfKind,
  fromTo,
  ofKind,
  startKindsFor,
  startOfKind,
} from '../../../src-renderer/piece/panel/positions.ts';
import { newAllOver } from '../../../src-renderer/piece/all-over/all-overs.ts';
import { onRows } from '../../written-projects.ts';

/** 100 rows: a hem of 20, "rib" on rows 21–30, and the main part. */
const sections = sectionsOf(100, {
  ...START_PIECE,
  hemRows: 20,
  sections: [{ name: 'rib', rows: 10, isLined: false, gauge: null, tension: '' }],
});
const on = (firstRow: number, lastRow: number) => ({ firstRow, height: lastRow - firstRow + 1, sections });
const rowsOf = (extent: Extent): number[] => Object.values(rowsOfExtent(extent, sections));

describe('the position of a band', () => {
  it.each<[Position['kind'], number]>([
    ['from-row', 40],
    ['above-hem', 40],
    ['from-edge', 40],
    ['from-edge', 3],
    ['from-row', 3],
  ])('said by %s keeps it on row %i', (kind, row) => {
    const said = ofKind(kind, { kind: 'from-row', row }, on(row, row + 4));
    expect(said.kind).toBe(kind);
    expect(firstRowAt(said, 5, sections)).toBe(row);
  });

  it('said by a hem that it does not stand above is the second row above it, the first that can be in pattern', () => {
    const said = ofKind('above-hem', { kind: 'from-row', row: 5 }, on(5, 9));
    expect(said).toEqual({ kind: 'above-hem', rows: 1 });
    expect(firstRowAt(said, 5, sections)).toBe(22);
  });
});

describe('the rows of an all-over', () => {
  it('start on the same row by every kind of start', () => {
    for (const kind of ['from-row', 'above-hem', 'from-edge'] as const) {
      const from = startOfKind(kind, on(35, 100));
      expect(from.kind).toBe(kind);
      expect(rowsOf(fromTo(from, TO_THE_TOP)), kind).toEqual([35, 100]);
    }
    expect(startKindsFor({ hemRows: 20 }, 'from-row')).toEqual(['from-edge', 'above-hem', 'from-row']);
    expect(startKindsFor({ hemRows: 0 }, 'from-row')).toEqual(['from-edge', 'from-row']);
    expect(startKindsFor({ hemRows: 0 }, 'above-hem')).toContain('above-hem');
  });

  it.each([28, 90, 100])('end on row %i by every kind of end', (last) => {
    for (const kind of ['from-edge', 'to-row', 'so-high'] as const) {
      const extent = endingBy(kind, onRows(25, last), on(25, last));
      expect(rowsOf(extent), kind).toEqual([25, last]);
      for (const back of ['from-edge', 'to-row'] as const) {
        expect(rowsOf(endingBy(back, extent, on(25, last))), `${kind}, ${back}`).toEqual([25, last]);
      }
    }
    expect(endOfKind('from-edge', on(25, 28))).toEqual({ ...TO_THE_TOP, section: { named: 'rib' }, rows: 2 });
  });

  it('that were centred start on the row where they stood', () => {
    const at = { kind: 'centred', section: 'body', oddRow: 'below' } as const;
    expect(asStart(at)).toBeNull();
    // Rows 31–100 less 20 are 25 below.
    expect(endingBy('to-row', { kind: 'so-high', height: 20, at }, on(56, 75))).toEqual(onRows(56, 75));
    expect(asStart({ kind: 'from-edge', edge: 'upper', section: 'piece', rows: 3 })).toBeNull();
  });

  it('never end below their first row by the form', () => {
    expect(fromTo({ kind: 'from-row', row: 50 }, { kind: 'to-row', row: 20 })).toEqual(onRows(50, 50));
  });
});

describe('a new all-over on a hemmed piece', () => {
  const outline = { rows: 100 } as Parameters<typeof newAllOver>[1]['outline'];
  const rowsWith = (...patterns: readonly (readonly [number, number])[]): Extent => {
    const placed = patterns.map(([firstRow, lastRow]) => ({ firstRow, lastRow }));
    return newAllOver('m', { outline, sections, patterns: placed as never }).position;
  };
  const start = { kind: 'above-hem', rows: 1 };

  it('starts on the second row above the hem', () => {
    expect(rowsWith()).toEqual({ kind: 'from-to', from: start, to: TO_THE_TOP });
    expect(rowsOf(rowsWith())).toEqual([22, 100]);
    // What stands in the hem alone is not in its way.
    expect(rowsWith([12, 18])).toEqual({ kind: 'from-to', from: start, to: TO_THE_TOP });
  });

  it('goes above what is there, and below it where there is nothing above', () => {
    expect(rowsWith([30, 40])).toEqual(onRows(41));
    expect(rowsWith([60, 100])).toEqual({ kind: 'from-to', from: start, to: { kind: 'to-row', row: 59 } });
  });
});
