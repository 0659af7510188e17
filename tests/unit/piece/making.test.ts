/** Which rows of a piece can have a tension, and how it begins (common practice, no source). */
import { describe, expect, it } from 'vitest';
import { beginningOf, rowsWithTension } from '@shared/piece/index.ts';
import { START_PIECE } from '@shared/project/index.ts';

const hemmed = { ...START_PIECE, hemRows: 20, hem: { turning: 'loose', gauge: null } } as const;

describe('the beginning of a piece', () => {
  it('is open where a hem folds, whose loops are hung, and closed elsewhere', () => {
    expect([beginningOf(START_PIECE), beginningOf(hemmed)]).toEqual(['closed', 'open']);
    expect(beginningOf({ ...START_PIECE, hemRows: 1 })).toBe('closed');
  });

  it('is what was said', () => {
    expect(beginningOf({ ...hemmed, begins: 'closed' })).toBe('closed');
    expect(beginningOf({ ...START_PIECE, begins: 'picked-up' })).toBe('picked-up');
  });
});

describe('tension is asked', () => {
  it('of the rows that a plain piece has', () => {
    expect(rowsWithTension(START_PIECE, false)).toEqual(['main', 'lastRow']);
    expect(rowsWithTension({ ...START_PIECE, ends: 'on-a-thread' }, true)).toEqual(['main', 'pattern']);
  });

  it('of waste yarn, both halves of a hem, its turning row and the row that joins it', () => {
    const all = ['waste', 'facing', 'turningRow', 'outside', 'joiningRow', 'main', 'pattern', 'lastRow'];
    expect(rowsWithTension(hemmed, true)).toEqual(all);
    const flat = { ...hemmed, hem: { turning: 'none', gauge: null } } as const;
    expect(rowsWithTension(flat, true)).not.toContain('turningRow');
  });

  it('of no waste yarn and no joining where the hem begins closed', () => {
    const closed = rowsWithTension({ ...hemmed, begins: 'closed' }, true);
    expect(closed).toEqual(['facing', 'turningRow', 'outside', 'main', 'pattern', 'lastRow']);
  });
});
