/** Random projects whose patterns wish for floats that are not too long. */
import fc from 'fast-check';
import type { AnchorWish, Pattern } from '@shared/pattern/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { settled } from '../written-projects.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject, count } from './projects.ts';

/** What patterns wish of their floats, with cells forbidden and wanted by hand. */
export const anyWish: fc.Arbitrary<AnchorWish> = fc.record({
  longest: fc.oneof({ arbitrary: count(1, 8), weight: 9 }, fc.constant(1000)),
  isBehindFigure: fc.boolean(),
  byHand: fc.array(
    fc.record({
      motif: fc.constantFrom('motif-1', 'motif-2'),
      column: count(-4, 12),
      row: count(0, 7),
      is: fc.constantFrom('never' as const, 'always' as const),
    }),
    { maxLength: 4 },
  ),
});

/** The project with the same wish for all of its patterns. */
export function wishing(project: ProjectAt, anchors: AnchorWish | null): ProjectAt {
  return settled(project, { patterns: project.patterns.map((pattern): Pattern => ({ ...pattern, anchors })) });
}

/** Bands, all-overs, or both, and one wish for all. */
export const anyAnchoredProject: fc.Arbitrary<{ readonly project: ProjectAt; readonly wish: AnchorWish }> = fc
  .record({ project: fc.oneof(anyProject, anyFilledProject), wish: anyWish })
  .map(({ project, wish }) => ({ project: wishing(project, wish), wish }));
