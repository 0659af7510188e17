import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { startsAcross } from '@shared/motif/repeat/index.ts';

const starts = (...rows: string[]) => startsAcross(gridFromText(rows, '.X'), { width: 5, height: 1 }, 0);

describe('where a repeat may start across', () => {
  it('is at the longest run of blank columns, counted round the repeat', () => {
    expect(starts('.X.X.')).toEqual({ blankFirst: 4, blankLast: 1, blank: 2 });
  });

  it('is at the first of two that are as long', () => {
    expect(starts('X.XX.')).toEqual({ blankFirst: 1, blankLast: 2, blank: 1 });
  });
});
