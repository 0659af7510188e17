import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { floatLengthsOf, nextFloat, purlSideOf, type PurlSide } from '@shared/plan/purl-side/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { byHand, COLUMNS, FIVE } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';

function purl(project: ProjectAt): { plan: Plan; side: PurlSide } {
  const plan = makePlan(pieceIn(project));
  return { plan, side: purlSideOf(plan, project.mainYarn) };
}

/** `0 L4-L1`: the yarn and its needles. */
function said(side: PurlSide, row: number): string[] {
  return side.row(row).floats.map(({ strand, first, last }) => `${strand.yarn} ${label(first)}-${label(last)}`);
}

describe('what lies over what', () => {
  it("has the second feeder's yarn over the first's, whichever comes first on the needles", () => {
    // common practice, no source: the second feeder stands nearer to the knitter.
    // Two columns of contrast with eight needles between them: main floats behind each, contrast between them.
    const { side } = purl(COLUMNS);
    expect(said(side, 2)).toEqual(['0 L5-L5', '0 R5-R5', '1 L4-R4']);
  });

  it('has what is laid by hand next to the fabric, in the order of laying, and main over it', () => {
    // One row of three yarns: X and O lie among each other, so both float. Row 2 comes from the left.
    const { side } = purl(
      projectWith({ motif: ['X.O.X.O'], copies: [1], stitches: 11, rows: 3, piece: FIVE, band: byHand(-4) }),
    );
    expect(side.row(2).floats.map(({ strand }) => strand.yarn)).toEqual([1, 2, 0, 0, 0, 0]);
    // Both lie on L1 and on R1, the later one over the other.
    expect(said(side, 2).slice(0, 2)).toEqual(['1 L3-L1', '2 L1-R2']);
  });

  it('has a carry over the rows that it passes: it belongs to the row that takes it up', () => {
    // Odd rows come from the right: row 2 ends at its right end, and after a blank row row 4 enters at its left.
    const { side } = purl(
      projectWith({ motif: ['X.X', '...', 'X.X'], copies: [1], stitches: 6, rows: 5, piece: FIVE, band: byHand(-2) }),
    );
    expect([1, 2, 3, 5].flatMap((row) => side.row(row).carries)).toEqual([]);
    expect(side.row(4).carries).toEqual([
      {
        yarn: 1,
        from: { row: 2, needle: 0 },
        to: { row: 4, needle: -2 },
        turnsAt: 'right',
        entersAt: 'left',
        isOver: false,
      },
    ]);
    expect(side.reach).toBe(2);
  });

  it('leaves a tail where a yarn begins and where it ends, and both where it is cut', () => {
    // common practice, no source: carried over at most 8 rows, so ten blank rows between have it cut.
    const motif = ['X.X', ...Array<string>(10).fill('...'), 'X.X'];
    const { side } = purl(projectWith({ motif, copies: [1], stitches: 6, rows: 14, piece: FIVE, band: byHand(-2) }));
    const ends = Array.from({ length: 14 }, (_, index) => side.row(index + 1).ends).flat();
    expect(
      ends.map(({ yarn, row, needle, at, side: where }) => `${yarn} ${row} ${label(needle)} ${at} ${where}`),
    ).toEqual([
      '0 1 R3 start right',
      '1 2 L2 start left',
      '1 2 R1 end right',
      '1 13 R1 start right',
      '1 13 L2 end left',
      '0 14 R3 end right',
    ]);
  });

  it('has each wrap come from the one before it on its edge', () => {
    const motif = ['X....X', 'X....X', 'X....X', 'X....X'];
    const { side } = purl(projectWith({ motif, copies: [1], stitches: 12, rows: 6, piece: FIVE, band: byHand(-3) }));
    const wraps = [2, 3, 4, 5].flatMap((row) => side.row(row).wraps.map((wrap) => [row, wrap] as const));
    expect(
      wraps.map(([row, { needle, edge, from }]) => `${row} ${label(needle)} ${edge} from ${from?.row ?? 'none'}`),
    ).toEqual(['2 L4 left from none', '3 R4 right from none', '4 L4 left from 2', '5 R4 right from 3']);
  });
});

describe('floats by length', () => {
  it('counts them by yarn, and keeps a bar from reaching over the limit', () => {
    const { plan } = purl(COLUMNS);
    const lengths = floatLengthsOf(plan, COLUMNS.piece.floatLimit);
    expect(lengths.limits).toEqual([5]);
    expect(lengths.yarns).toEqual([
      { yarn: 0, open: 6, covered: 0, longest: 1 },
      { yarn: 1, open: 3, covered: 0, longest: 8 },
    ]);
    expect(lengths.over).toEqual({ open: 3, covered: 0 });
    expect(lengths.bars.map(({ from, to, open }) => [from, to, open])).toEqual([
      [1, 1, 6],
      [2, 2, 0],
      [3, 3, 0],
      [4, 4, 0],
      [5, 5, 0],
      [6, 6, 0],
      [7, 7, 0],
      [8, 8, 3],
    ]);
  });

  it('keeps the bars few however long a float is, with each length within a short limit alone', () => {
    const wide = projectWith({
      motif: ['X'],
      copies: [1, 1],
      stitches: 180,
      rows: 3,
      piece: FIVE,
      band: byHand(-80, 79),
    });
    const { bars } = floatLengthsOf(purl(wide).plan, wide.piece.floatLimit);
    expect(bars.slice(0, 7).map(({ from, to }) => [from, to])).toEqual([
      [1, 1],
      [2, 2],
      [3, 3],
      [4, 4],
      [5, 5],
      [6, 25],
      [26, 45],
    ]);
    expect(bars.at(-1)?.to).toBe(158);
    expect(bars.length).toBeLessThanOrEqual(16);
  });

  it('ends a bar at the limit where bars are wider than a stitch', () => {
    const twelve = { floatLimit: { stitches: 12, mm: null } };
    const wide = projectWith({
      motif: ['X'],
      copies: [1, 1],
      stitches: 180,
      rows: 3,
      piece: twelve,
      band: byHand(-80, 79),
    });
    const { bars } = floatLengthsOf(purl(wide).plan, wide.piece.floatLimit);
    expect(bars.slice(0, 3).map(({ from, to }) => [from, to])).toEqual([
      [1, 12],
      [13, 32],
      [33, 52],
    ]);
  });

  it('tells apart those that a lining covers', () => {
    const lined = projectWith({
      motif: ['X', 'X', 'X'],
      copies: [1, 1],
      stitches: 20,
      rows: 5,
      piece: { ...FIVE, isLined: true },
      band: byHand(-5, 4),
    });
    const { over, yarns } = floatLengthsOf(purl(lined).plan, lined.piece.floatLimit);
    expect(over).toEqual({ open: 0, covered: 3 });
    expect(yarns[1]).toEqual({ yarn: 1, open: 0, covered: 3, longest: 8 });
  });

  it('goes from one float of a length to the next, up the piece and round to its foot', () => {
    const { plan } = purl(COLUMNS);
    const rows: number[] = [];
    let at = { row: 1, needle: -100 };
    for (let step = 0; step < 4; step++) {
      const next = nextFloat(plan.rows, { from: 8, to: 8 }, at);
      if (!next) throw new Error('A float of 8 is there');
      rows.push(next.row);
      at = { row: next.row, needle: next.float.first };
    }
    expect(rows).toEqual([2, 3, 4, 2]);
    expect(nextFloat(plan.rows, { from: 2, to: 7 }, at)).toBeNull();
  });
});
