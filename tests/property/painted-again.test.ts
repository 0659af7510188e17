/** A plan from the one before cells were painted is the plan that is made from nothing, and its findings are the same. */
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingsOf, type Finding } from '@shared/check/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  pieceIn,
  projectAt,
  sampleProject,
  startAllOver,
  START_PIECE,
  type KnitPiece,
  type ProjectAt,
} from '@shared/project/index.ts';
import { anyKnittable } from '../knit/projects.ts';
import { settled } from '../written-projects.ts';
import { anyAnchoredProject } from './anchored-projects.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject, count } from './projects.ts';

/** `face`: not the motif is changed, but the face that is worn. */
const WHERE = ['cell', 'cell', 'left', 'right', 'row', 'column', 'face'] as const;

/** Where a motif is painted, and what with: a cell, one of an outermost column, a whole row or column. */
interface Painting {
  readonly motif: number;
  readonly cell: number;
  readonly yarn: number;
  readonly where: (typeof WHERE)[number];
}

/** One after the other. */
const anyPaintings: fc.Arbitrary<Painting[]> = fc.array(
  fc.record({
    motif: fc.nat(),
    cell: fc.nat(),
    yarn: fc.nat(),
    where: fc.constantFrom(...WHERE),
  }),
  { minLength: 1, maxLength: 4 },
);

function painted(project: ProjectAt, painting: Painting): ProjectAt {
  if (painting.where === 'face') {
    const finishedFace = project.piece.finishedFace === 'knit' ? 'purl' : 'knit';
    return { ...project, piece: { ...project.piece, finishedFace } };
  }
  const at = painting.motif % project.motifs.length;
  return {
    ...project,
    motifs: project.motifs.map((of, index) =>
      index === at ? { ...of, grid: paintedGrid(of.grid, painting, painting.yarn % project.yarns.length) } : of,
    ),
  };
}

function paintedGrid(grid: Grid, { cell, where }: Painting, yarn: number): Grid {
  const cells = grid.cells.slice();
  const at = cell % cells.length;
  const [row, column] = [Math.floor(at / grid.width), at % grid.width];
  const start = row * grid.width;
  if (where === 'row') cells.fill(yarn, start, start + grid.width);
  else if (where === 'column') for (let up = column; up < cells.length; up += grid.width) cells[up] = yarn;
  else cells[where === 'left' ? start : where === 'right' ? start + grid.width - 1 : at] = yarn;
  return { ...grid, cells };
}

/** Large enough that most of it stays as it was: an all-over whose motif has more rows than the piece, or comes again and again. */
const anyLargeAllOver: fc.Arbitrary<ProjectAt> = fc
  .record({
    width: count(20, 44),
    height: fc.oneof(count(8, 16), count(60, 90)),
    stitches: count(30, 44),
    share: fc.constantFrom(1, 2, 4),
    cells: fc.infiniteStream(count(0, 9)),
    endNeedles: fc.boolean(),
    finishedFace: fc.constantFrom('knit' as const, 'purl' as const),
    chooses: fc.constantFrom('ahead-seen' as const, 'ahead-unseen' as const, 'by-hand' as const),
    step: fc.constantFrom(0, 3),
    narrowed: fc.constantFrom(0, 6),
    isLined: fc.boolean(),
  })
  .map(({ width, height, stitches, share, cells, endNeedles, finishedFace, chooses, step, narrowed, isLined }) => {
    const sample = projectAt(sampleProject());
    const [motif] = sample.motifs;
    if (!motif) throw new Error('The sample has a motif');
    const drawn = Uint8Array.from({ length: width * height }, () => (Number(cells.next().value) < share ? 1 : 0));
    drawn[0] = 1;
    return settled(sample, {
      motifs: [{ ...motif, grid: { width, height, cells: drawn } }],
      machine: { ...sample.machine, chooses },
      piece: {
        ...START_PIECE,
        finishedFace,
        isLined,
        shape: { kind: 'tapered', stitches, stitchesAtTop: stitches - narrowed, straightRows: 4, rows: 120 } as const,
      },
      patterns: [{ ...startAllOver(motif.id, 3), endNeedles, step }],
    });
  });

function planOf(piece: KnitPiece, before: Plan | null): Plan | null {
  const plan = outcome(() => makePlan(piece, undefined, before));
  return plan.ok ? plan.value : null;
}

describe('a plan made again after cells were painted', () => {
  it.each([
    ['on projects with bands', anyProject, 20, 0],
    ['on filled projects', anyFilledProject, 20, 0],
    ['on projects with anchors', anyAnchoredProject.map(({ project }) => project), 20, 0],
    ['on projects as knitters make them', anyKnittable, 100, 10],
    ['on large all-overs', anyLargeAllOver, 1000, 500],
  ])('is the plan made from nothing, with the same findings, %s', (_, projects, rows, findings) => {
    const taken = { rows: 0, findings: 0 };
    fc.assert(
      fc.property(projects, anyPaintings, (start, paintings) => {
        let project = start;
        let before = planOf(pieceIn(project), null);
        let found: readonly Finding[] = before ? findingsOf(pieceIn(project), before) : [];
        for (const painting of paintings) {
          project = painted(project, painting);
          const piece = pieceIn(project);
          const fresh = planOf(piece, null);
          const again = planOf(piece, before);
          // Told apart in detail only where they differ: plans are large.
          if (!isDeepStrictEqual(again, fresh)) expect(again).toEqual(fresh);
          if (!fresh || !again) continue;
          taken.rows += again.rows.filter((row, index) => row === before?.rows[index]).length;
          const foundAgain = findingsOf(piece, again, before);
          const foundAnew = findingsOf(piece, fresh);
          if (!isDeepStrictEqual(foundAgain, foundAnew)) expect(foundAgain).toEqual(foundAnew);
          const known = new Set(found);
          taken.findings += foundAgain.filter((finding) => known.has(finding)).length;
          [before, found] = [again, foundAgain];
        }
      }),
      { numRuns: 60 },
    );
    // Otherwise nothing was taken over that could be wrong. On small pieces no finding may be left.
    expect(taken.rows).toBeGreaterThan(rows);
    expect(taken.findings).toBeGreaterThanOrEqual(findings);
  });

  it('tells again of a stretch in every copy only what became other', () => {
    const sample = projectAt(sampleProject());
    const [motif] = sample.motifs;
    if (!motif) throw new Error('The sample has a motif');
    const shape = { kind: 'rectangle', stitches: 90, rows: 180 } as const;
    const patterns = [startAllOver(motif.id, 2)];
    const tiled: ProjectAt = { ...sample, piece: { ...START_PIECE, shape }, patterns };
    // One stitch: the stretches that hold it are told anew in all tiers, and most of their stacks are as they were.
    const cell = Math.floor(motif.grid.cells.length / 2);
    const yarn = 1 - (motif.grid.cells[cell] as number);
    const pieces = [pieceIn(tiled), pieceIn(painted(tiled, { motif: 0, cell, yarn, where: 'cell' }))] as const;
    const before = makePlan(pieces[0]);
    const known = new Set(findingsOf(pieces[0], before));
    const found = findingsOf(pieces[1], makePlan(pieces[1], undefined, before), before);
    expect(found).toEqual(findingsOf(pieces[1], makePlan(pieces[1])));
    const kept = found.filter((finding) => known.has(finding));
    expect(kept.length).toBeGreaterThan(found.length * 0.6);
    expect(kept.length).toBeLessThan(found.length);
  });
});
