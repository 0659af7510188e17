/** Random projects as knitters make them: on every kind of machine, shaped, hemmed, several patterns one above the other. */
import fc from 'fast-check';
import type { Machine, Slot } from '@shared/bed/index.ts';
import type { EdgeStep } from '@shared/piece/index.ts';
import type { Band, AllOver } from '@shared/pattern/index.ts';
import { startBand, startAllOver, startGroup, type ProjectAt } from '@shared/project/index.ts';
import { anyFilledProject } from '../property/filled-projects.ts';
import { anyProject } from '../property/projects.ts';
import { settled } from '../written-projects.ts';

const count = (min: number, max: number) => fc.integer({ min, max });

const bed = { needles: 200, pitchMm: 4.5 };

const usual: Machine = {
  bed,
  chooses: 'ahead-seen',
  places: 'any-needle',
  endNeedles: 'switch',
  increases: 'both-edges',
  weights: true,
};

export const anyMachine: fc.Arbitrary<Machine> = fc.oneof(
  { arbitrary: fc.record({ weights: fc.boolean() }).map(({ weights }) => ({ ...usual, weights })), weight: 3 },
  fc.record({
    bed: fc.constant(bed),
    chooses: fc.constantFrom('ahead-seen' as const, 'ahead-unseen' as const, 'by-hand' as const),
    places: fc.oneof(
      { arbitrary: fc.constant('any-needle' as const), weight: 3 },
      fc.record({ repeat: fc.constantFrom(8, 12, 24), from: fc.constantFrom(0 as Slot, -12 as Slot) }),
    ),
    endNeedles: fc.constantFrom('switch' as const, 'always' as const, 'none' as const),
    increases: fc.constantFrom('both-edges' as const, 'carriage-side' as const),
    weights: fc.boolean(),
  }),
);

/** Bands one above the other with 0 to 3 plain rows between them. */
const stacked = (motifs: number): fc.Arbitrary<readonly Band[]> =>
  fc
    .array(
      fc.record({
        motif: fc.nat(motifs - 1),
        copies: fc.array(count(1, 2), { minLength: 1, maxLength: 2 }),
        ownBalls: fc.boolean(),
        endNeedles: fc.boolean(),
        plain: count(0, 3),
      }),
      { minLength: 2, maxLength: 3 },
    )
    .chain((given) =>
      count(1, 9).map((start) => {
        let row = start;
        return given.map(({ motif, copies, ownBalls, endNeedles, plain }): Band => {
          const id = `motif-${motif + 1}`;
          const band: Band = {
            ...startBand(id, copies),
            groups: copies.map((across) => ({ ...startGroup(id, across), hasOwnBall: ownBalls })),
            position: { kind: 'from-row', row },
            endNeedles,
          };
          row += 8 + plain;
          return band;
        });
      }),
    );

/** The height of each drawing is made 8 so that bands stand where they are meant to. */
function withMotifsOf8(project: ProjectAt): ProjectAt {
  const motifs = project.motifs.map((motif) => {
    const { width, height, cells } = motif.grid;
    const all = new Uint8Array(width * 8).fill(project.mainYarn);
    for (let at = 0; at < all.length; at++) all[at] = cells[at % (width * height)] as number;
    return { ...motif, grid: { width, height: 8, cells: all } };
  });
  return { ...project, motifs };
}

const anySteps: fc.Arbitrary<readonly { gap: number; left: number; right: number }[]> = fc.array(
  fc.record({ gap: count(1, 6), left: count(-4, 4), right: count(-4, 4) }),
  { maxLength: 5 },
);

/** Shaped row by row, several stitches at an edge at a time. */
function shapedByRows(project: ProjectAt, given: readonly { gap: number; left: number; right: number }[]): ProjectAt {
  const { stitches, rows } = project.piece.shape;
  const steps: EdgeStep[] = [];
  let row = project.piece.hemRows + 2;
  for (const { gap, left, right } of given) {
    row += gap;
    if (row > rows - 2) break;
    steps.push({ row, left, right });
  }
  return { ...project, piece: { ...project.piece, shape: { kind: 'steps', stitches, rows, steps } } };
}

const anyStacked: fc.Arbitrary<ProjectAt> = fc
  .record({ project: anyProject, seed: fc.nat(1) })
  .chain(({ project }) =>
    stacked(project.motifs.length).map((bands) => ({ ...withMotifsOf8(project), patterns: bands })),
  );

const anyAllOver: fc.Arbitrary<ProjectAt> = fc
  .record({
    project: anyProject,
    firstRow: count(1, 12),
    endNeedles: fc.oneof({ arbitrary: fc.constant(true), weight: 3 }, fc.constant(false)),
  })
  .map(({ project, firstRow, endNeedles }): ProjectAt => {
    const fill: AllOver = { ...startAllOver('motif-1', firstRow + project.piece.hemRows), endNeedles };
    return { ...project, patterns: [fill] };
  });

/** Any of these, on any machine. */
export const anyKnittable: fc.Arbitrary<ProjectAt> = fc
  .record({
    project: fc.oneof(anyProject, anyFilledProject, anyStacked, anyAllOver),
    machine: anyMachine,
    steps: fc.oneof({ arbitrary: fc.constant(null), weight: 4 }, anySteps),
  })
  .map(({ project, machine, steps }) => {
    const shaped = steps === null ? project : shapedByRows(project, steps);
    return settled({ ...shaped, machine });
  });
