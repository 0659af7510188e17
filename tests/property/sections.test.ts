/** What sections do to any piece, and what they leave alone. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugesOf, lengthMm, rowHeightMm, sectionsOf } from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { checkedPlan, type CheckedPlan } from '../unit/check/found.ts';
import { anyProject } from './projects.ts';

function planned(project: ProjectAt): CheckedPlan {
  const made = outcome(() => checkedPlan(project));
  fc.pre(made.ok);
  return (made as { value: CheckedPlan }).value;
}

describe('sections', () => {
  it('have each row of the piece once, from the bottom up', () => {
    let parted = 0;
    fc.assert(
      fc.property(anyProject, ({ piece }) => {
        const { rows } = piece.shape;
        const made = outcome(() => sectionsOf(rows, piece));
        fc.pre(made.ok);
        const { value } = made as { value: ReturnType<typeof sectionsOf> };
        const counted = value.flatMap(({ first, last }) =>
          Array.from({ length: last - first + 1 }, (_, at) => first + at),
        );
        expect(counted).toEqual(Array.from({ length: rows }, (_, at) => at + 1));
        // Row by row, each as tall as the gauge of its section makes it.
        const tall = value.reduce((sum, { first, last, gauge }) => sum + (last - first + 1) * rowHeightMm(gauge), 0);
        expect(lengthMm(gaugesOf(piece), 1, rows)).toBeCloseTo(tall, 8);
        parted += Number(piece.sections.length > 0);
      }),
      { numRuns: 200, seed: 51 },
    );
    expect(parted).toBeGreaterThan(20);
  });

  it('of the gauge of the piece knit what the piece knits without them, on the same rows', () => {
    let parted = 0;
    fc.assert(
      fc.property(anyProject, (project) => {
        const { piece, patterns } = project;
        const { gauge } = piece;
        const parts = piece.sections.map((part) => ({ ...part, gauge, isLined: false }));
        const sectioned = planned({ ...project, piece: { ...piece, sections: parts, hem: { ...piece.hem, gauge } } });
        const plain = planned({
          ...project,
          piece: { ...piece, sections: [], hem: { ...piece.hem, gauge: null } },
          patterns: patterns.map((pattern, index) =>
            pattern.kind === 'band'
              ? { ...pattern, position: { kind: 'from-row', row: sectioned.patterns[index]?.firstRow ?? 1 } }
              : pattern,
          ),
        });
        expect(sectioned.fabric).toEqual(plain.fabric);
        expect(sectioned.yarn).toEqual(plain.yarn);
        expect(sectioned.wrapStrands).toEqual(plain.wrapStrands);
        expect(sectioned.findings).toEqual(plain.findings);
        parted += Number(parts.length > 0);
      }),
      { numRuns: 150, seed: 52, maxSkipsPerRun: 2000 },
    );
    expect(parted).toBeGreaterThan(15);
  });
});
