/** A plan from the one before a cell was painted is the plan that is made from nothing. */
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingsOf } from '@shared/check/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn, type KnitPiece, type ProjectAt } from '@shared/project/index.ts';
import { anyKnittable } from '../knit/projects.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject } from './projects.ts';

/** Cells to paint one after the other: where in the motif, and what with. */
const anyPaintings = fc.array(fc.record({ motif: fc.nat(), cell: fc.nat(), yarn: fc.nat() }), {
  minLength: 1,
  maxLength: 3,
});

function painted(project: ProjectAt, { motif, cell, yarn }: { motif: number; cell: number; yarn: number }): ProjectAt {
  const at = motif % project.motifs.length;
  return {
    ...project,
    motifs: project.motifs.map((of, index) => {
      if (index !== at) return of;
      const cells = of.grid.cells.slice();
      cells[cell % cells.length] = yarn % project.yarns.length;
      return { ...of, grid: { ...of.grid, cells } };
    }),
  };
}

function planOf(piece: KnitPiece, before: Plan | null): Plan | null {
  const plan = outcome(() => makePlan(piece, undefined, before));
  return plan.ok ? plan.value : null;
}

describe('a plan made again after cells were painted', () => {
  it.each([
    ['on projects with bands', anyProject],
    ['on filled projects', anyFilledProject],
    ['on projects as knitters make them', anyKnittable],
  ])('is the plan made from nothing, with the same findings, %s', (_, projects) => {
    let taken = 0;
    fc.assert(
      fc.property(projects, anyPaintings, (start, paintings) => {
        let project = start;
        let before = planOf(pieceIn(project), null);
        for (const painting of paintings) {
          project = painted(project, painting);
          const piece = pieceIn(project);
          const fresh = planOf(piece, null);
          const again = planOf(piece, before);
          // Told apart in detail only where they differ: plans are large.
          if (!isDeepStrictEqual(again, fresh)) expect(again).toEqual(fresh);
          if (!fresh || !again) continue;
          taken += again.rows.filter((row, index) => row === before?.rows[index]).length;
          expect(findingsOf(piece, again)).toEqual(findingsOf(piece, fresh));
          before = again;
        }
      }),
      { numRuns: 60 },
    );
    expect(taken).toBeGreaterThan(100);
  });
});
