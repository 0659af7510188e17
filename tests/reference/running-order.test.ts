/** The running order, followed to the letter by a knitter who knows nothing else, comes to the designed fabric. */
import { describe, expect, it } from 'vitest';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import { ALL_KINDS, type Kind } from '../knit/kinds.ts';
import { knitPlan } from '../knit/knit-plan.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../unit/fabric/pieces.ts';
import { knitMany, refusedShare, triedText } from '../knit/tried.ts';

const EYELETS = { turning: 'eyelets', gauge: null } as const;

describe('a running order followed by the simulated knitter', () => {
  it('comes to the sample', () => {
    expect(knitPlan(projectAt(sampleProject()))).toMatchObject({ outcome: 'as-designed' });
  });

  // The worked checks of placing, common practice, no source: 120 stitches with two groups of three copies, and a hem of
  // 100 rows with a motif of 31 on its outside.
  it.each([
    { of: 'two groups of three copies', piece: {} },
    { of: 'a hem with a motif on its outside', piece: { hemRows: 100 } },
    { of: 'a hem over eyelets, from the left', piece: { hemRows: 100, startSide: 'left', hem: EYELETS } },
  ] as const)('comes to $of', ({ piece }) => {
    const given = { motif: BLANK_FIRST_12_BY_31, copies: [3, 3], stitches: 120, rows: 160, piece };
    expect(knitPlan(projectWith(given))).toMatchObject({ outcome: 'as-designed' });
  });

  const ofKind: Partial<Record<Kind, number>> = {};

  it.each([13, 14, 15, 16, 17, 18])(
    'comes to every size of 50 random projects (seed %i), its yarns laid and measured as planned, but for the few that hands cannot knit',
    (seed) => {
      const tried = knitMany(50, seed);
      console.log(triedText(tried));
      expect(tried.wrong).toEqual([]);
      expect(tried.projects).toBe(50);
      expect(refusedShare(tried)).toBeLessThan(0.25);
      for (const kind of ALL_KINDS) ofKind[kind] = (ofKind[kind] ?? 0) + tried.ofKind[kind];
    },
  );

  // Of what the seeds above have knitted.
  it('has come to projects of every kind', () => {
    expect(ALL_KINDS.filter((kind) => !ofKind[kind])).toEqual([]);
  });
});
