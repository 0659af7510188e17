/**
 * Sections up the piece, worked by hand.
 *
 * Gauges: 20 stitches and 25 rows in 10 cm are 5 mm wide and 4 mm tall, 40 and
 * 50 are half of that.
 */
import { describe, expect, it } from 'vitest';
import { gaugeOfMotif } from '@shared/fabric/index.ts';
import {
  firstRowAt,
  gaugeAt,
  gaugesOf,
  lengthMm,
  movedTo,
  nearestRowsDown,
  nearestRowsUp,
  sectionsOf,
  sizeOf,
  wayMm,
  type Position,
  type Turning,
} from '@shared/piece/index.ts';
import { joinOf, type Plan } from '@shared/plan/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { pieceIn, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import type { Float } from '@shared/strands/index.ts';
import { checkedPlan, type CheckedPlan } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';
import { linesOf } from '../running-order/order-lines.ts';
import { onRows } from '../../written-projects.ts';

const WIDE = { stitches: 20, rows: 25 };
const FINE = { stitches: 40, rows: 50 };
const fine = { name: 'gulls', rows: 10, isLined: false, gauge: FINE, tension: '' };

/** 20 stitches and 30 rows, the lowest 10 of them of half the gauge. */
const LADDER = ['X......X'];
const ladder = (row: number, parts = [fine]): ProjectAt =>
  projectWith({
    motif: LADDER,
    copies: [1],
    stitches: 20,
    rows: 30,
    piece: { gauge: WIDE, sections: parts, floatLimit: { stitches: 99, mm: 25 } },
    band: { position: { kind: 'from-row', row }, unit: 'whole' },
  });

const contrastFloat = ({ rows }: Plan, row: number): Float | undefined =>
  rows[row - 1]?.floats.find(({ strand }) => strand.role === 'contrast');

describe('a section with a gauge of its own', () => {
  const { piece } = ladder(3);
  const gauges = gaugesOf(piece);

  it('is as long and as wide as its own stitches make it', () => {
    // 10 rows of 2 mm and 20 of 4 mm; 20 stitches of 2.5 mm, then of 5 mm.
    expect(lengthMm(gauges, 1, 30)).toBeCloseTo(20 + 80, 10);
    expect(lengthMm(gauges, 9, 12)).toBeCloseTo(2 * 2 + 2 * 4, 10);
    expect(sizeOf(piece.shape, gauges)).toMatchObject({ lengthMm: 100, straightMm: [50, 100] });
  });

  it('has its gauge on all of its rows, the last one too', () => {
    expect([1, 10, 11].map((row) => gaugeAt(gauges, row))).toEqual([FINE, FINE, WIDE]);
  });

  it('is counted through where a length in rows is asked for', () => {
    // 3 cm up from the cast-on: 10 rows make 2 cm, and 1 cm is 2.5 rows of 4 mm; halfway, the larger.
    expect(nearestRowsUp(gauges, 1, 30)).toBe(13);
    // 9 cm down from the top: 20 rows make 8 cm, and 1 cm is 5 rows of 2 mm.
    expect(nearestRowsDown(gauges, 30, 90)).toBe(25);
  });

  it('has floats as long as its stitches are wide', () => {
    // 6 stitches between the sides of the ladder: 15 mm in the section, within 25; 30 mm in the body, too long.
    const below = checkedPlan(ladder(3));
    expect(contrastFloat(below, 3)).toMatchObject({ stitches: 6, mm: 15, isOver: false });
    expect(below.findings.filter(({ code }) => code === 'long-floats')).toEqual([]);
    const above = checkedPlan(ladder(15));
    expect(contrastFloat(above, 15)).toMatchObject({ stitches: 6, mm: 30, isOver: true });
    expect(above.findings).toMatchObject([{ code: 'long-floats', rows: [15, 15], longest: 6, longestMm: 30 }]);
  });

  it('is crossed by a strand at the height of each row and the width of the wider', () => {
    // From row 9 to row 12: row 10 is 2 mm, rows 11 and 12 are 4 mm tall; 3 stitches of 5 mm aside.
    expect(wayMm(gauges, 3, 9, 12)).toBeCloseTo(3 * 5 + 2 + 4 + 4, 10);
  });

  it('takes as much yarn as its loops are long', () => {
    const { loops, uses } = checkedPlan({ ...ladder(3), patterns: [] }).yarn;
    // Munden's relation, dry relaxed: l = √(19 / S) cm. S is 4 · 5 = 20 in the section and 2 · 2.5 = 5 above, so the
    // loops are 9.747 and 19.494 mm; 200 stitches of the one and 400 of the other. To that come a tail of 150 mm at both
    // ends, and casting off, which takes between 3 and 4 widths of the last row: 20 stitches of 5 mm.
    expect(loops.map(({ mm }) => mm)).toEqual([expect.closeTo(9.7468, 4), expect.closeTo(19.4936, 4)]);
    expect(uses[0]?.totalMm).toBeCloseTo(200 * 9.74679 + 400 * 19.49359 + 2 * 150 + 3.5 * 20 * 5, 0);
  });

  it('lets plain stitches beside a fill be as many as its own floats may cross', () => {
    // With end-needle selection on, 8 plain stitches are 20 mm in the section, and 40 mm in the body.
    const filled = (firstRow: number, lastRow: number): CheckedPlan => {
      const project = ladder(3);
      const fills = [
        { ...startAllOver('motif', 1), position: onRows(firstRow, lastRow), border: { left: 8, right: 0 } },
      ];
      return checkedPlan({ ...project, patterns: fills });
    };
    const codes = (plan: CheckedPlan): string[] => plan.findings.map(({ code }) => code);
    expect(codes(filled(2, 9))).not.toContain('contrast-to-edges');
    expect(codes(filled(12, 20))).toContain('contrast-to-edges');
  });

  it('gives the chart of a motif that stands in it its proportion', () => {
    expect(gaugeOfMotif(pieceIn(ladder(3)), 'motif')).toEqual(FINE);
    expect(gaugeOfMotif(pieceIn(ladder(15)), 'motif')).toEqual(WIDE);
    expect(gaugeOfMotif(pieceIn({ ...ladder(3), patterns: [] }), 'motif')).toEqual(WIDE);
    expect(gaugeOfMotif(pieceIn(ladder(31)), 'motif')).toEqual(WIDE);
  });

  it('is measured as the piece is where its gauge is that of the piece', () => {
    const alike = checkedPlan(ladder(15, [{ ...fine, gauge: WIDE }]));
    const plain = checkedPlan(ladder(15, []));
    expect(alike.gauges).toEqual(plain.gauges);
    expect([alike.yarn, alike.wrapStrands, alike.findings]).toEqual([plain.yarn, plain.wrapStrands, plain.findings]);
  });
});

describe('lining', () => {
  const rib = { name: 'rib', rows: 8, isLined: false, gauge: null, tension: '' };
  const lined = (isLined: boolean, hemRows = 0): string[] =>
    sectionsOf(40, {
      hemRows,
      hem: { turning: 'none', gauge: null },
      sections: [rib, { ...rib, name: 'band', isLined: true }],
      gauge: WIDE,
      isLined,
    })
      .filter((section) => section.isLined)
      .map(({ name }) => (typeof name === 'string' ? name : name.named));

  it('covers the section that has it, in a piece that has none', () => {
    expect(lined(false)).toEqual(['band']);
  });

  it('covers every section of a lined piece', () => {
    expect(lined(true)).toEqual(['rib', 'band', 'body']);
  });

  it('covers both halves of a hem, which is its own lining', () => {
    expect(lined(false, 10)).toEqual(['hem-back', 'hem-front', 'band']);
  });
});

describe('placing up and down', () => {
  // Hem 1–5 and 6–10, "rib" 11–18, "gulls" 19–28, body 29–60.
  const rib = { name: 'rib', rows: 8, isLined: false, gauge: null, tension: '' };
  const sections = sectionsOf(60, {
    hemRows: 10,
    hem: { turning: 'none', gauge: null },
    sections: [rib, fine],
    gauge: WIDE,
    isLined: false,
  });

  it.each<{ why: string; position: Position; height: number; first: number }>([
    // 32 − 7 = 25 rows are left, 13 below and 12 above.
    {
      why: 'centred in the body, the odd row below',
      position: { kind: 'centred', section: 'body', oddRow: 'below' },
      height: 7,
      first: 42,
    },
    {
      why: 'centred in the body, the odd row above',
      position: { kind: 'centred', section: 'body', oddRow: 'above' },
      height: 7,
      first: 41,
    },
    {
      why: 'centred in a named section',
      position: { kind: 'centred', section: { named: 'gulls' }, oddRow: 'below' },
      height: 4,
      first: 22,
    },
    {
      why: 'centred in the whole piece',
      position: { kind: 'centred', section: 'piece', oddRow: 'below' },
      height: 20,
      first: 21,
    },
    {
      why: 'where a hem shows, if nothing is said',
      position: { kind: 'centred', section: 'shown', oddRow: 'below' },
      height: 3,
      first: 7,
    },
    { why: 'directly above the hem', position: { kind: 'above-hem', rows: 0 }, height: 9, first: 11 },
    { why: 'on the third row above the hem', position: { kind: 'above-hem', rows: 2 }, height: 9, first: 13 },
    {
      why: 'two rows from the lower edge of a section',
      position: { kind: 'from-edge', edge: 'lower', section: { named: 'rib' }, rows: 2 },
      height: 3,
      first: 13,
    },
    {
      why: 'two rows from its upper edge: rows 14–16 of 11–18',
      position: { kind: 'from-edge', edge: 'upper', section: { named: 'rib' }, rows: 2 },
      height: 3,
      first: 14,
    },
    {
      why: 'four rows from the top of the piece: rows 51–56 of 60',
      position: { kind: 'from-edge', edge: 'upper', section: 'piece', rows: 4 },
      height: 6,
      first: 51,
    },
  ])('$first: $why', ({ position, height, first }) => {
    expect(firstRowAt(position, height, sections)).toBe(first);
  });

  it.each<{ position: Position; height: number; refused: Error }>([
    {
      position: { kind: 'centred', section: { named: 'cuff' }, oddRow: 'below' },
      height: 3,
      refused: problemError('section-missing', { section: { named: 'cuff' } }),
    },
    {
      position: { kind: 'centred', section: { named: 'rib' }, oddRow: 'below' },
      height: 9,
      refused: problemError('motif-taller-than-section', { rows: 9, section: { named: 'rib' }, available: 8 }),
    },
    {
      position: { kind: 'from-edge', edge: 'lower', section: { named: 'rib' }, rows: 6 },
      height: 3,
      refused: problemError('motif-leaves-section', {
        rows: 3,
        section: { named: 'rib' },
        plain: 6,
        left: 5,
        edge: 'lower',
      }),
    },
  ])('is refused by name: $refused.message', ({ position, height, refused }) => {
    expect(() => firstRowAt(position, height, sections)).toThrow(refused);
  });

  it('keeps the edge it is counted from when it is moved, as long as it fits', () => {
    const position = { kind: 'from-edge', edge: 'lower', section: { named: 'rib' }, rows: 2 } as const;
    expect(movedTo(position, 15, 3, sections)).toEqual({ ...position, rows: 4 });
    expect(movedTo({ ...position, edge: 'upper' }, 15, 3, sections)).toEqual({ ...position, edge: 'upper', rows: 1 });
    // Rows 17–19 leave the section.
    expect(movedTo(position, 17, 3, sections)).toEqual({ kind: 'from-row', row: 17 });
  });
});

describe('a folded hem', () => {
  // Common practice, no source: 100 rows are 50 hidden and 50 shown; a motif of 31 rows lies on rows 61–91 and is set
  // up at 59. The turning row is the last of the hidden half and the hem is joined on the last row.
  const hem = (turning: Turning): ProjectAt =>
    projectWith({
      motif: Array.from({ length: 31 }, (_, row) => (row % 2 === 0 ? 'X.XX' : 'XX..')),
      copies: [1],
      stitches: 40,
      rows: 130,
      piece: { hemRows: 100, hem: { turning, gauge: null } },
    });

  it.each(['loose', 'none', 'eyelets'] as const)(
    'folds on row 50 and is joined on row 100, with a turning row: %s',
    (turning) => {
      const plan = checkedPlan(hem(turning));
      expect(bandsOf(plan)[0]).toMatchObject({ firstRow: 61, lastRow: 91, setUpAt: 59 });
      expect(joinOf(plan)).toEqual({ at: 100, loops: 40 });
      expect(linesOf(hem(turning), 'eyelets', 'hang-hem').map((line) => line.split(' ').slice(0, 2).join(' '))).toEqual(
        turning === 'eyelets' ? ['49: eyelets', '100: hang'] : ['100: hang'],
      );
    },
  );

  // Common practice, no source: an odd hem with a turning row of 11 is 5, the turning row, 5.
  it.each([
    { turning: 'none', facing: [1, 5], outside: [6, 11] },
    { turning: 'loose', facing: [1, 6], outside: [7, 11] },
    { turning: 'eyelets', facing: [1, 6], outside: [7, 11] },
  ] as const)(
    'of 11 rows with a turning row ($turning) has five on each side of it',
    ({ turning, facing, outside }) => {
      const [back, front] = sectionsOf(20, {
        hemRows: 11,
        hem: { turning, gauge: null },
        sections: [],
        gauge: WIDE,
        isLined: false,
      });
      expect([back?.first, back?.last]).toEqual(facing);
      expect([front?.first, front?.last]).toEqual(outside);
    },
  );
});
