/** New projects from a few measurements. */
import { describe, expect, it } from 'vitest';
import { findingsOf } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import {
  NEW_PIECE_KINDS,
  pieceIn,
  pieceMeasuring,
  projectAt,
  projectForMotif,
  projectForPiece,
  projectFromText,
  projectToText,
  START_PLACE,
  type NewPiece,
  type Project,
} from '@shared/project/index.ts';
import { fitted } from '@shared/piece/index.ts';

const GAUGE = { stitches: 28, rows: 40 };
const SLEEVE: NewPiece = {
  kind: 'sleeve',
  gauge: GAUGE,
  widthMm: 200,
  topMm: 320,
  lengthMm: 450,
  hemMm: 0,
  seam: 0,
  isInfant: false,
  motif: null,
};
const NAMES = { project: 'Skerry', motif: 'gull', piece: 'sleeve' };
const planned = (project: Project) => pieceIn(projectAt(project, START_PLACE));

describe('a piece of so many centimetres', () => {
  // Stitches = cm × stitches in 10 cm ÷ 10 (definition of gauge): 20 × 2.8 = 56, 32 × 2.8 = 89.6, 45 × 4 = 180.
  it('has the stitches and rows nearest to them, a sleeve widened evenly at both edges', () => {
    expect(pieceMeasuring(SLEEVE, 'sleeve').shape).toEqual({
      kind: 'tapered',
      stitches: 56,
      stitchesAtTop: 90,
      rows: 180,
      straightRows: 1,
    });
    const { shape } = pieceMeasuring({ ...SLEEVE, topMm: 318 }, 'sleeve');
    // 31.8 cm are 89 stitches: a stitch more, so that both edges widen alike.
    expect(shape).toMatchObject({ stitches: 56, stitchesAtTop: 90 });
  });

  it('has the stitches that both seams take besides, and the hidden half of a hem', () => {
    const piece = pieceMeasuring({ ...SLEEVE, kind: 'round', seam: 2, hemMm: 30 }, 'cuff');
    // 3 cm are 12 rows: 24 in the hem, 12 of them hidden, so 180 + 12 in all.
    expect(piece.shape).toEqual({ kind: 'rectangle', stitches: 56 + 4, rows: 192 });
    expect(piece.hemRows).toBe(24);
    expect(piece.seamAllowance).toEqual({ left: 2, right: 2 });
  });

  it('stays as long and as wide when the gauge is another', () => {
    const before = pieceMeasuring({ ...SLEEVE, hemMm: 30 }, 'sleeve');
    const after = fitted(before, { ...before, gauge: { stitches: 20, rows: 30 } });
    expect(after.shape).toMatchObject({ stitches: 40, stitchesAtTop: 64, rows: 144 });
    expect(after.hemRows).toBe(18);
  });
});

describe('a project for a piece', () => {
  it.each(NEW_PIECE_KINDS)('%s holds what was asked and nothing else, can be planned, and is a file', (kind) => {
    for (const motif of [null, { width: 24, height: 20 }]) {
      const project = projectForPiece({ ...SLEEVE, kind, isInfant: true, motif }, NAMES);
      expect(projectFromText(projectToText(project))).toEqual(project);
      const [piece] = project.pieces;
      expect(project.pieces).toHaveLength(1);
      expect(piece).toMatchObject({ name: 'sleeve', isInfant: true, gauge: GAUGE, notes: '', sections: [] });
      expect(piece?.patterns).toHaveLength(motif === null ? 0 : 1);
      expect(project.motifs.map(({ grid }) => [grid.width, grid.height])).toEqual([[24, motif === null ? 24 : 20]]);
    }
    const plain = planned(projectForPiece({ ...SLEEVE, kind }, NAMES));
    const plan = makePlan(plain);
    expect(plan.outline.rows).toBe(180);
    expect(findingsOf(plain, plan)).toEqual([]);
  });
});

// Common practice, no source: a border stands on a hem that is deep enough, or a little above it.
it.each([
  {
    why: 'on a hem that is as deep as it',
    hemMm: 60,
    position: { kind: 'centred', section: 'shown', oddRow: 'below' },
  },
  { why: 'above a hem that is not', hemMm: 25, position: { kind: 'above-hem', rows: 2 } },
  {
    why: 'anywhere on a piece without one',
    hemMm: 0,
    position: { kind: 'centred', section: 'shown', oddRow: 'below' },
  },
])('a motif to draw stands $why', ({ hemMm, position }) => {
  const { pieces } = projectForPiece({ ...SLEEVE, hemMm, motif: { width: 24, height: 20 } }, NAMES);
  expect(pieces[0]?.patterns).toMatchObject([{ kind: 'band', position }]);
});

it('a project for a motif has it as large as was asked, and a piece with nothing on it', () => {
  const project = projectForMotif({ width: 31, height: 7 }, NAMES);
  expect(projectFromText(projectToText(project))).toEqual(project);
  expect(project.motifs[0]?.grid).toMatchObject({ width: 31, height: 7 });
  expect(project.motifs[0]?.grid.cells.every((cell) => cell === project.mainYarn)).toBe(true);
  expect(project.pieces[0]?.patterns).toEqual([]);
});
