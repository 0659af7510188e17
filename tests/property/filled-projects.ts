/** Random projects with patterns all over them. */
import fc from 'fast-check';
import { bandsOf, type AllOver } from '@shared/pattern/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { TO_THE_TOP, type End, type Extent, type Position, type Start } from '@shared/piece/index.ts';
import { onRows, settled } from '../written-projects.ts';
import { anyPosition, anyMending, anyProject, count } from './projects.ts';

/** From one place to another, or so many rows: they may leave the piece, stand in sections that are not there, and end below their first. */
const anyExtent: fc.Arbitrary<Extent> = fc.oneof(
  {
    arbitrary: fc
      .record({ first: count(1, 20), rows: fc.option(count(1, 40)) })
      .map(({ first, rows }) => onRows(first, rows === null ? null : first + rows - 1)),
    weight: 3,
  },
  {
    arbitrary: fc.record({
      kind: fc.constant('from-to' as const),
      from: anyPosition.map(asStart),
      to: fc.oneof({ arbitrary: fc.constant(TO_THE_TOP), weight: 2 }, anyPosition.map(asEnd)),
    }),
    weight: 3,
  },
  fc.record({ kind: fc.constant('so-high' as const), height: count(1, 24), at: anyPosition }),
);

function asStart(position: Position): Start {
  if (position.kind === 'centred') return { kind: 'above-hem', rows: 1 };
  return position.kind === 'from-edge' ? { ...position, edge: 'lower' } : position;
}

function asEnd(position: Position): End {
  return position.kind === 'from-edge' ? { ...position, edge: 'upper' } : TO_THE_TOP;
}

/** A fill of one of two motifs; its rows may leave the piece, and its border may cover it. */
const anyFill: fc.Arbitrary<AllOver> = fc
  .record({
    kind: fc.constant('all-over' as const),
    motif: fc.constantFrom('motif-1', 'motif-2'),
    unit: fc.constantFrom('repeat' as const, 'whole' as const),
    isMirrored: fc.boolean(),
    position: anyExtent,
    border: fc.oneof(fc.constant({ left: 0, right: 0 }), fc.record({ left: count(0, 12), right: count(0, 12) })),
    centre: fc.constantFrom('column' as const, 'between' as const),
    shift: count(-12, 12),
    step: fc.oneof(fc.constant(0), count(-9, 9)),
    cutCopies: fc.constantFrom('kept' as const, 'kept-if-read' as const, 'left-out' as const),
    endNeedles: fc.boolean(),
    colourOrder: fc.constant(null),
    anchors: fc.constant(null),
    mending: anyMending,
  })
  .map(({ mending, ...fill }) => ({ ...fill, ...mending }));

/** Projects with one or two fills, often without groups so that most can be knitted. */
export const anyFilledProject: fc.Arbitrary<ProjectAt> = fc
  .record({
    project: anyProject,
    allOvers: fc.oneof(
      { arbitrary: fc.array(anyFill, { minLength: 1, maxLength: 1 }), weight: 3 },
      fc.array(anyFill, { minLength: 2, maxLength: 2 }).map(oneAboveTheOther),
    ),
    hasGroups: fc.oneof({ arbitrary: fc.constant(false), weight: 3 }, fc.constant(true)),
  })
  .map(({ project, allOvers, hasGroups }) =>
    settled(project, {
      patterns: [
        ...(hasGroups ? bandsOf(project) : []),
        ...allOvers.map((fill) =>
          project.motifs.some(({ id }) => id === fill.motif) ? fill : { ...fill, motif: 'motif-1' },
        ),
      ],
    }),
  );

/** Two fills that do not meet. */
function oneAboveTheOther([below, above]: readonly AllOver[]): AllOver[] {
  const lowest = below as AllOver;
  return [
    { ...lowest, position: onRows(2, 9) },
    { ...(above as AllOver), position: onRows(10) },
  ];
}
