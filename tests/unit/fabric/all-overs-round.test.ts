import { describe, expect, it } from 'vitest';
import { closedPiece, allOversRound } from '@shared/fabric/index.ts';
import { needleRound, type Ring, type Tube, type Piece } from '@shared/piece/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { pieceIn, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { closedPanelWords } from '@shared/words/closed-panel.ts';
import { plainText } from '@shared/words/index.ts';
import { projectWith } from './pieces.ts';

/** `XO.` on every row, from edge to edge of a piece; no end-needle selection, which would break it there. */
function filled(piece: Partial<Piece>, stitches = 12, rows = 12): ProjectAt {
  const project = projectWith({ motif: ['XO.'], copies: [1], stitches, rows, piece });
  return { ...project, patterns: [{ ...startAllOver('motif', 1), unit: 'whole', endNeedles: false }] };
}

/** True if the pattern goes on all round the rolled picture: three neighbours are always of three yarns, across the seam too. */
function goesOn(plan: Plan, tube: Tube, ring: Ring): boolean {
  const { cells, width, first } = plan.fabric;
  const yarn = (place: number): number | undefined =>
    cells[(ring.row - 1) * width + needleRound(tube, ring, place % ring.stitches) - first];
  return Array.from({ length: ring.stitches }, (_, at) => new Set([yarn(at), yarn(at + 1), yarn(at + 2)])).every(
    (yarns) => yarns.size === 3,
  );
}

describe('a fill of the closed piece', () => {
  it('is off where the rolled picture breaks at the seam, as the piece widens', () => {
    const project = filled({ shape: { kind: 'tapered', stitches: 12, stitchesAtTop: 18, rows: 13, straightRows: 1 } });
    const plan = makePlan(pieceIn(project));
    const tube = closedPiece(plan, pieceIn(project));
    const [fill] = allOversRound(plan, tube);
    const off = (fill?.broken ?? []).flatMap(({ first, last }) =>
      Array.from({ length: last - first + 1 }, (_, at) => first + at),
    );
    expect(off.length).toBeGreaterThan(0);
    expect(off).toEqual(tube.rings.filter((ring) => !goesOn(plan, tube, ring)).map(({ row }) => row));
    // 12 stitches up to row 3, 14 from row 4, 16 from row 8, 18 from row 12: off on rows 4–11, by two and by one.
    expect(fill).toMatchObject({
      seam: { matching: 5, mirrored: 0, off: 8, plain: 0 },
      broken: [
        { first: 4, last: 7, by: -1 },
        { first: 8, last: 11, by: 1 },
      ],
    });
    expect(plainText(closedPanelWords.allOver(0, fill as NonNullable<typeof fill>))).toBe(
      'All-over 1, rows 1–13. It matches across the seam on 5 of 13 rows: off on 8 (rows 4–11).',
    );
  });

  it('counts only rows that are seen', () => {
    const project = filled({ hemRows: 8 }, 13);
    const plan = makePlan(pieceIn(project));
    const [fill] = allOversRound(plan, closedPiece(plan, pieceIn(project)));
    expect(fill).toMatchObject({ rows: { first: 5, last: 12 }, seam: { off: 8 }, broken: [{ first: 5, last: 12 }] });
  });

  it('is said to match where it does', () => {
    const project = filled({});
    const plan = makePlan(pieceIn(project));
    const [fill] = allOversRound(plan, closedPiece(plan, pieceIn(project)));
    expect(plainText(closedPanelWords.allOver(0, fill as NonNullable<typeof fill>))).toBe(
      'All-over 1, rows 1–12. It matches across the seam on all 12 rows.',
    );
  });
});
