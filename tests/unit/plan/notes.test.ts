import { describe, expect, it } from 'vitest';
import { rowNotes } from '@shared/plan/index.ts';
import { checkedPlan } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';

describe('the set-up row of a pattern', () => {
  const setUps = (rows: readonly number[]): number[] => {
    const project = projectWith({ motif: ['X.', 'XX'], copies: [2], stitches: 20, rows: 12 });
    const bands = rows.flatMap((row) =>
      project.bands.map((band) => ({ ...band, position: { kind: 'from-row' as const, row } })),
    );
    return rowNotes(checkedPlan({ ...project, bands })).flatMap((notes, index) =>
      notes.some(({ code }) => code === 'set-up') ? [index + 1] : [],
    );
  };

  // Common practice, no source: patterns that touch have no plain row between them.
  it('is the plain row below it, and no row where another pattern ends right below', () => {
    expect(setUps([3, 7])).toEqual([2, 6]);
    expect(setUps([3, 5])).toEqual([2]);
  });
});
