import { describe, expect, it } from 'vitest';
import type { Plan } from '@shared/plan/index.ts';
import { label } from '@shared/bed/index.ts';
import { firstNeedlesOf, type PlacedAllOver } from '@shared/fabric/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { allOversOf, bandsOf, type AllOver } from '@shared/pattern/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import { startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { checkedPlan } from '../check/found.ts';
import { linesOf } from '../running-order/order-lines.ts';
import { text } from './fabric-text.ts';
import { projectWith } from './pieces.ts';
import { onRows } from '../../written-projects.ts';

interface Given {
  readonly motif: readonly string[];
  readonly stitches: number;
  readonly rows: number;
  readonly fill?: Partial<AllOver>;
  readonly piece?: Partial<Piece>;
}

/** Without end-needle selection, so that the copies alone are seen. */
function filled({ motif, stitches, rows, fill, piece }: Given): ProjectAt {
  const project = projectWith({ motif, copies: [1], stitches, rows, ...(piece ? { piece } : {}) });
  return { ...project, patterns: [{ ...startAllOver('motif', 1), endNeedles: false, ...fill }] };
}

/** How many copies of the first all-over are whole, clipped, and left out. */
const countsOf = (plan: Plan): object => {
  const { whole, clipped, leftOut } = allOversOf(plan)[0] as PlacedAllOver;
  return { whole, clipped: clipped.length, leftOut: leftOut.length };
};

const knitted = (given: Given): string[] => text(checkedPlan(filled(given)).fabric);

describe('the middle of a fill', () => {
  it.each([
    // An odd copy has a middle column; it stands on the middle stitch of an odd row.
    { motif: 'XO.', stitches: 9, centre: 'column', line: 'XO.XO.XO.', isHalfOff: false },
    // An even row has no middle stitch: the column stands on the stitch left of the middle.
    { motif: 'XO.', stitches: 8, centre: 'column', line: 'O.XO.XO.', isHalfOff: true },
    // An even copy has no middle column: the line in its middle stands in the middle of an even row.
    { motif: 'XO..', stitches: 8, centre: 'column', line: '..XO..XO', isHalfOff: false },
    { motif: 'XO..', stitches: 9, centre: 'column', line: '..XO..XO.', isHalfOff: true },
    // Between copies: on an even row there is a line in the middle.
    { motif: 'XO.', stitches: 8, centre: 'between', line: '.XO.XO.X', isHalfOff: false },
    { motif: 'XO..', stitches: 8, centre: 'between', line: 'XO..XO..', isHalfOff: false },
    // An odd row has none: the line stands left of the middle stitch.
    { motif: 'XO..', stitches: 9, centre: 'between', line: 'XO..XO..X', isHalfOff: true },
  ] as const)('$centre of $motif on $stitches stitches', ({ motif, stitches, centre, line, isHalfOff }) => {
    const given = { motif: [motif], stitches, rows: 1, fill: { centre, unit: 'whole' as const } };
    expect(knitted(given)).toEqual([line]);
    expect(allOversOf(checkedPlan(filled(given)))[0]?.isHalfOff).toBe(isHalfOff);
  });

  it('is the middle of what the seam leaves of the row', () => {
    // 9 stitches, 2 of them in the left seam: the middle of the other 7 is the 6th.
    const piece = { seamAllowance: { left: 2, right: 0 } };
    expect(knitted({ motif: ['.X.'], stitches: 9, rows: 1, piece, fill: { unit: 'whole' } })).toEqual(['..X..X..X']);
  });

  it('is left by the shift, and by each tier with its step', () => {
    const given = { motif: ['X...', 'XX..'], stitches: 8, rows: 6 };
    const centre = 'between';
    expect(knitted({ ...given, fill: { centre } })).toEqual([
      'X...X...',
      'XX..XX..',
      'X...X...',
      'XX..XX..',
      'X...X...',
      'XX..XX..',
    ]);
    expect(knitted({ ...given, fill: { centre, shift: 1 } }).slice(-2)).toEqual(['.X...X..', '.XX..XX.']);
    // Half of 4 at each tier is a brick.
    expect(knitted({ ...given, fill: { centre, step: 2 } })).toEqual([
      'X...X...',
      'XX..XX..',
      '..X...X.',
      '..XX..XX',
      'X...X...',
      'XX..XX..',
    ]);
    expect(knitted({ ...given, fill: { centre, step: -1 } })).toEqual([
      '..X...X.',
      '..XX..XX',
      '...X...X',
      'X..XX..X',
      'X...X...',
      'XX..XX..',
    ]);
  });
});

describe('a fill', () => {
  it('takes the true repeat up as well as across, or the whole chart', () => {
    // Five rows and five columns drawn of a pattern of 2 by 2.
    const motif = ['X.X.X', '.X.X.', 'X.X.X', '.X.X.', 'X.X.X'];
    const given = { motif, stitches: 10, rows: 6 };
    const checked = ['X.X.X.X.X.', '.X.X.X.X.X'];
    expect(knitted({ ...given, fill: { centre: 'between' } })).toEqual([...checked, ...checked, ...checked]);
    expect(knitted({ ...given, fill: { centre: 'between', unit: 'whole' } })).toEqual([
      'X.X.XX.X.X',
      'X.X.XX.X.X',
      '.X.X..X.X.',
      'X.X.XX.X.X',
      '.X.X..X.X.',
      'X.X.XX.X.X',
    ]);
  });

  it('lies as its chart is shown, and is mirrored once more where asked', () => {
    const given = { motif: ['XXO.'], stitches: 8, rows: 1 };
    const fill = { centre: 'between', unit: 'whole' } as const;
    expect(knitted({ ...given, fill })).toEqual(['XXO.XXO.']);
    expect(knitted({ ...given, fill: { ...fill, isMirrored: true } })).toEqual(['.OXX.OXX']);
  });

  it('keeps its border plain and ends at its last row', () => {
    const fill = { position: onRows(2, 3), border: { left: 1, right: 2 } };
    expect(knitted({ motif: ['X'], stitches: 6, rows: 4, fill })).toEqual(['......', '.XXX..', '.XXX..', '......']);
  });

  it('is clipped row by row, and counts the copies that are cut', () => {
    // 8 stitches, then 6, then 4: the outer copies of 2 lose their outer stitch, then all they have.
    const piece = {
      shape: {
        kind: 'steps' as const,
        stitches: 8,
        rows: 3,
        steps: [2, 3].map((row) => ({ row, left: -1, right: -1 })),
      },
    };
    const given = { motif: ['XX', 'XX', 'XX'], stitches: 8, rows: 3, piece };
    const fill = { unit: 'whole', centre: 'between' } as const;
    expect(knitted({ ...given, fill })).toEqual(['  XXXX  ', ' XXXXXX ', 'XXXXXXXX']);
    const plan = checkedPlan(filled({ ...given, fill }));
    expect(countsOf(plan)).toEqual({
      whole: 2,
      clipped: 2,
      leftOut: 0,
    });
    expect(plan.findings).toContainEqual({ code: 'fill-cut', rows: [1, 3], copies: 2, whole: 2, allOver: 0 });
    // Each has lost half of its 6 stitches.
    for (const cutCopies of ['left-out', 'kept-if-read'] as const) {
      expect(knitted({ ...given, fill: { ...fill, cutCopies } })).toEqual(['  XXXX  ', ' .XXXX. ', '..XXXX..']);
    }
    const left = checkedPlan(filled({ ...given, fill: { ...fill, cutCopies: 'left-out' } }));
    expect(left.findings).toContainEqual({ code: 'fill-left-out', rows: [1, 3], copies: 2, whole: 2, allOver: 0 });
  });

  it('cuts copies at its last row and at its border, but not where nothing but ground is cut off', () => {
    // Copies of 4 with figure in their two middle columns on 8 stitches less 1 plain at each edge: no figure is lost.
    const across = { motif: ['.XX.'], stitches: 8, rows: 1 };
    const bordered = { border: { left: 1, right: 1 }, centre: 'between', unit: 'whole' } as const;
    expect(countsOf(checkedPlan(filled({ ...across, fill: bordered })))).toMatchObject({ whole: 2, clipped: 0 });
    const wider = { ...bordered, border: { left: 2, right: 1 } };
    expect(countsOf(checkedPlan(filled({ ...across, fill: wider })))).toMatchObject({ whole: 1, clipped: 1 });
    // Three rows a copy, five rows: the second tier is cut by one row.
    const up = checkedPlan(filled({ motif: ['X', '.', 'X'], stitches: 3, rows: 5, fill: { unit: 'whole' } }));
    expect(countsOf(up)).toMatchObject({ whole: 3, clipped: 3 });
  });

  it('has its set-up row, and its first and last row, in the running order', () => {
    const given = filled({ motif: ['X.'], stitches: 6, rows: 9, fill: { position: onRows(4, 8) } });
    expect(linesOf(given, 'selecting', 'carriage')).toEqual([
      '2: selecting on',
      '3: carriage pattern',
      '8: carriage plain',
      '8: selecting off',
    ]);
  });

  it('from row 1 on has no set-up row, which blocks where no needle can be pushed by hand', () => {
    const project = filled({ motif: ['X.'], stitches: 6, rows: 9 });
    expect(checkedPlan(project).findings.map(({ code }) => code)).not.toContain('no-set-up-row');
    const unseen = { ...project, machine: { ...project.machine, chooses: 'ahead-unseen' } } as const;
    expect(checkedPlan(unseen).findings).toContainEqual({ code: 'no-set-up-row', rows: [1, 1] });
  });

  it('names the first needles of its copies, as far as they lie on the piece', () => {
    // L4 … R5 for 9 stitches; the middle copy of 4 lies on L2 … R2, half a stitch to the left.
    const plan = checkedPlan(filled({ motif: ['XO..'], stitches: 9, rows: 2 }));
    const first = firstNeedlesOf(allOversOf(plan)[0] as PlacedAllOver, plan.outline);
    expect(first.map(label)).toEqual(['L2', 'R3']);
  });

  it('warns of letters that would be worn mirrored', () => {
    const project = filled({ motif: ['XX.', 'X..'], stitches: 9, rows: 4 });
    const motifs = project.motifs.map((motif) => ({ ...motif, isLettering: true }));
    const codes = (fill: Partial<AllOver>): string[] =>
      checkedPlan({
        ...project,
        motifs,
        patterns: [...bandsOf(project), { ...startAllOver('motif', 1), ...fill }],
      }).findings.map(({ code }) => code);
    expect(codes({})).toContain('mirrored-lettering-in-fill');
    expect(codes({ isMirrored: true })).not.toContain('mirrored-lettering-in-fill');
  });

  it('with a wide border floats to the edges while end-needle selection is on', () => {
    const given = { motif: ['X.'], stitches: 30, rows: 4 };
    const codes = (left: number): string[] =>
      checkedPlan(filled({ ...given, fill: { border: { left, right: 0 }, endNeedles: true } })).findings.map(
        ({ code }) => code,
      );
    expect(codes(5)).not.toContain('contrast-to-edges');
    expect(codes(6)).toContain('contrast-to-edges');
  });
});

describe('a fill that cannot be knitted as described', () => {
  const plain: Given = { motif: ['XX', 'X.'], stitches: 10, rows: 10 };
  const refusal = (project: ProjectAt) => {
    try {
      checkedPlan(project);
    } catch (thrown) {
      return problemOf(thrown);
    }
    throw new Error('it was planned');
  };

  it.each<[string, Partial<AllOver>, object]>([
    [
      'ends above the piece',
      { position: onRows(1, 11) },
      { code: 'rows-outside-piece', facts: { first: 1, last: 11, rows: 10 } },
    ],
    [
      'begins above the piece',
      { position: onRows(12) },
      { code: 'rows-outside-piece', facts: { first: 12, rows: 10 } },
    ],
    [
      'ends below its first row',
      { position: onRows(5, 4) },
      { code: 'fill-rows-turned', facts: { allOver: 1, first: 5, last: 4 } },
    ],
    ['is all border', { border: { left: 5, right: 5 } }, { code: 'fill-without-room', facts: { allOver: 1 } }],
    ['has lost its motif', { motif: 'gone' }, { code: 'motif-missing', facts: { motif: 'gone' } }],
  ])('%s', (_, fill, problem) => {
    const found = refusal(filled({ ...plain, fill }));
    expect(found).toMatchObject(problem);
    expect(words.problems.sentence(found)).not.toMatch(/undefined|NaN|\[object/);
  });

  it('has no figure', () => {
    expect(refusal(filled({ ...plain, motif: ['..'] }))).toMatchObject({ code: 'no-figure' });
  });

  it('wants needles of a band, on the rows on which they meet', () => {
    const project = projectWith({ ...plain, copies: [1], band: { position: { kind: 'from-row', row: 4 } } });
    const withFill = (fill: Partial<AllOver>): ProjectAt => ({
      ...project,
      patterns: [...bandsOf(project), { ...startAllOver('motif', 1), ...fill }],
    });
    expect(refusal(withFill({}))).toMatchObject({
      code: 'fill-overlaps-band',
      facts: { allOver: 1, band: 1, first: 4, last: 5 },
    });
    expect(refusal(withFill({ position: onRows(5) }))).toMatchObject({ facts: { first: 5, last: 5 } });
    expect(allOversOf(checkedPlan(withFill({ position: onRows(6) })))).toHaveLength(1);
    expect(allOversOf(checkedPlan(withFill({ position: onRows(1, 3) })))).toHaveLength(1);
    // The group stands on the two needles in the middle; beside it there is room.
    expect(allOversOf(checkedPlan(withFill({ border: { left: 6, right: 0 } })))).toHaveLength(1);
  });

  it('wants needles of another fill', () => {
    const project = filled(plain);
    const two = (other: Partial<AllOver>): ProjectAt => ({
      ...project,
      patterns: [
        ...bandsOf(project),
        { ...startAllOver('motif', 1), position: onRows(1, 5), border: { left: 0, right: 5 } },
        { ...startAllOver('motif', 3), ...other },
      ],
    });
    expect(refusal(two({}))).toMatchObject({ code: 'fills-overlap', facts: { one: 1, other: 2, first: 3, last: 5 } });
    expect(allOversOf(checkedPlan(two({ border: { left: 5, right: 0 } })))).toHaveLength(2);
    expect(allOversOf(checkedPlan(two({ position: onRows(6) })))).toHaveLength(2);
  });
});
