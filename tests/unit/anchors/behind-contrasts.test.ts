/** Anchors of main behind a figure of several contrasts: each takes a stitch from one of them. */
import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { knitPlan } from '../../knit/knit-plan.ts';
import { settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';

const [WIDTH, HEIGHT] = [21, 9];

/** A block of two contrasts in turn, on which each floats behind one stitch of the other, and main behind all of it. */
function chequered(longest: number): ProjectAt {
  const anchors = { longest, isBehindFigure: true, byHand: [] };
  const band = { unit: 'whole' as const, anchors, position: { kind: 'from-row' as const, row: 5 } };
  const block = Array.from({ length: HEIGHT }, () => 'X'.repeat(WIDTH));
  const project = projectWith({ motif: block, copies: [1], stitches: WIDTH + 4, rows: 20, band });
  const main = project.mainYarn;
  const [one, other] = [1 - main, 2];
  const cells = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, at) => (at % 2 === 0 ? one : other));
  return settled(project, {
    yarns: [...project.yarns, { name: 'moss', colour: '#6b7a4b', count: null, onHand: null }],
    motifs: project.motifs.map((motif) => ({ ...motif, grid: { width: WIDTH, height: HEIGHT, cells } })),
  });
}

describe('anchors of main behind two contrasts', () => {
  it.each([
    // One stitch taken leaves the contrast a float over three.
    { longest: 1, areThere: false },
    { longest: 2, areThere: false },
    { longest: 3, areThere: true },
  ])('with no float over $longest are there: $areThere', ({ longest, areThere }) => {
    const project = chequered(longest);
    const { rows, looseFloats } = makePlan(pieceIn(project));
    expect(rows.some(({ anchors }) => anchors.length > 0)).toBe(areThere);
    const long = rows.flatMap(({ row, floats }) =>
      floats.flatMap(({ strand, first, last, stitches }) =>
        stitches > longest ? [{ row, yarn: strand.yarn, first, last }] : [],
      ),
    );
    expect(long.filter(({ yarn }) => yarn !== project.mainYarn)).toEqual([]);
    const said = looseFloats.flatMap((floats, at) =>
      (floats ?? []).map(({ yarn, first, last }) => ({ row: at + 1, yarn, first, last })),
    );
    expect(said).toEqual(long);
    expect(knitPlan(project)).toMatchObject({ outcome: 'as-designed' });
  });
});
