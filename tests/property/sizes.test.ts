import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  acrossIn,
  applyChange,
  currentSize,
  goToSize,
  pieceIn,
  projectInSize,
  sizesOf,
  START_SIZES,
  type Project,
} from '@shared/project/index.ts';
import { anyProject } from './projects.ts';

const RUNS = { numRuns: 150, seed: 70 };

/** Any project in several sizes; needles by hand that a rule found are the one choice there is. */
const inSeveralSizes = anyProject
  .filter((project) => sizesOf(project).length > 1)
  .map((project): Project => ({
    ...project,
    bands: project.bands.map((band) => (band.rule.kind === 'by-hand' ? { ...band, choice: 0 } : band)),
  }));

/** A project of one size made by hand: the numbers and copies of a size, nothing chosen. */
function alone(project: Project, index: number): Project {
  const { name, shape, hemRows } = sizesOf(project)[index] as ReturnType<typeof sizesOf>[number];
  return {
    ...project,
    piece: { ...project.piece, shape, hemRows },
    sizes: START_SIZES,
    bands: project.bands.map(({ chosenInSizes: _, ...band }) => ({
      ...band,
      groups: band.groups.map((group) => {
        const { acrossInSizes: _, ...rest } = group;
        return { ...rest, across: acrossIn(group, name) };
      }),
    })),
  };
}

describe('each size', () => {
  it('is planned as a project of that size alone would be', () => {
    let planned = 0;
    fc.assert(
      fc.property(inSeveralSizes, (any) => {
        const project: Project = {
          ...any,
          bands: any.bands.map(({ chosenInSizes: _, ...band }) => ({ ...band, choice: 0, rule: { kind: 'seam' } })),
        };
        sizesOf(project).forEach((_, index) => {
          const inSize = outcome(() => makePlan(pieceIn(projectInSize(project, index))));
          expect(inSize).toEqual(outcome(() => makePlan(pieceIn(alone(project, index)))));
          if (inSize.ok) planned++;
        });
      }),
      RUNS,
    );
    expect(planned).toBeGreaterThan(150);
  });

  it('is what it was when one has been to another and back', () => {
    fc.assert(
      fc.property(inSeveralSizes, fc.array(fc.nat(3), { maxLength: 4 }), (project, way) => {
        const go = (from: Project, index: number): Project => applyChange(from, goToSize(from, index));
        const count = sizesOf(project).length;
        const away = way.reduce((at, index) => go(at, index % count), project);
        const back = go(away, currentSize(project));
        expect(back).toEqual(project);
        expect(sizesOf(away)).toEqual(sizesOf(project));
      }),
      RUNS,
    );
  });
});
