import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import {
  acrossIn,
  currentSize,
  pieceIn,
  inSize,
  sizesOf,
  type Project,
  type ProjectAt,
} from '@shared/project/index.ts';
import { anyProject } from './projects.ts';
import { settled, writtenProject } from '../written-projects.ts';

const RUNS = { numRuns: 150, seed: 70 };

/** Any project in several sizes. */
const inSeveralSizes = anyProject.filter(({ sizes }) => sizes.length > 1);

/** A project of one size made by hand: the numbers and copies of a size, nothing chosen. */
function alone(project: ProjectAt, index: number): ProjectAt {
  const { id, shape, hemRows } = sizesOf(project)[index] as ReturnType<typeof sizesOf>[number];
  return writtenProject({
    ...project,
    piece: { ...project.piece, shape, hemRows },
    patterns: bandsOf(project).map((band) => ({
      ...band,
      groups: band.groups.map((group) => {
        const { acrossInSizes: _, ...rest } = group;
        return { ...rest, across: acrossIn(group, id) };
      }),
    })),
  });
}

describe('each size', () => {
  it('is planned as a project of that size alone would be', () => {
    let planned = 0;
    fc.assert(
      fc.property(inSeveralSizes, (any) => {
        const ruled = bandsOf(any).map((band): Band => ({ ...band, choice: 0, rule: { kind: 'seam' } }));
        const chosenInNone = { ...any, whole: withNothingChosen(any.whole) };
        const project = settled({ ...chosenInNone, patterns: ruled });
        project.sizes.forEach((_, index) => {
          const there = outcome(() => makePlan(pieceIn(inSize(project, index))));
          expect(there).toEqual(outcome(() => makePlan(pieceIn(alone(project, index)))));
          if (there.ok) planned++;
        });
      }),
      RUNS,
    );
    expect(planned).toBeGreaterThan(150);
  });

  it('is looked at without a change of the project, in any order', () => {
    fc.assert(
      fc.property(inSeveralSizes, fc.array(fc.nat(3), { maxLength: 4 }), (project, way) => {
        const away = way.reduce((at, index) => inSize(at, index % at.sizes.length), project);
        expect(away.whole).toBe(project.whole);
        expect(inSize(away, currentSize(project))).toBe(project);
        expect(sizesOf(away)).toEqual(sizesOf(project));
      }),
      RUNS,
    );
  });
});

/** Every band as its rule finds it first. */
function withNothingChosen({ pieces, ...project }: Project): Project {
  const placed = { all: { by: 'rule', choice: 0 }, but: [] } as const;
  return {
    ...project,
    pieces: pieces.map((piece) => ({
      ...piece,
      patterns: piece.patterns.map((pattern) => (pattern.kind === 'band' ? { ...pattern, placed } : pattern)),
    })),
  };
}
