import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { gatherFindings } from '@shared/check/index.ts';
import type { EdgeStep } from '@shared/piece/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { START_PIECE } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { run } from '../strands/drawn-fabric.ts';
import { byHand, COLUMNS, FIVE, TWO_COLUMNS, onlyFindings as only, checkedPlan } from './found.ts';

describe('long floats', () => {
  it('of a contrast carried from group to group are one finding', () => {
    // L5 and R5: eight needles between them, L4–R4, on three rows; 8 · 100 / 28 mm.
    const plan = checkedPlan(COLUMNS);
    const [finding, ...others] = only(plan, 'long-floats');
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rows: [2, 4], role: 'contrast', yarn: 1, longest: 8, count: 3 });
    expect(finding?.longestMm).toBeCloseTo(28.571, 3);
    expect(run(finding?.needles.first as Slot, finding?.needles.last as Slot)).toBe('L4-R4');
    expect(finding?.isBetweenGroups).toBe(true);
  });

  it('inside one group are none that balls of their own would take away', () => {
    // Two groups, each with eight blank stitches between its own figure.
    const wide = projectWith({ motif: ['X........X'], copies: [1, 1], stitches: 24, rows: 9, piece: FIVE });
    const inside = only(checkedPlan(wide), 'long-floats').filter(({ role }) => role === 'contrast');
    expect(inside.length).toBeGreaterThan(0);
    expect(inside.map(({ isBetweenGroups }) => isBetweenGroups)).toEqual(inside.map(() => false));
  });

  it('between groups are told from those inside one, where a ball for each would help nothing', () => {
    expect(only(checkedPlan(COLUMNS), 'long-floats')).toMatchObject([{ isBetweenGroups: true }]);
    // Two groups beside each other, and eight needles of main inside the left one.
    const inside = projectWith({
      motif: ['X........X'],
      copies: [1, 1],
      stitches: 24,
      rows: 3,
      piece: FIVE,
      band: byHand(-12, 1),
    });
    const found = only(checkedPlan(inside), 'long-floats').filter(({ role }) => role === 'contrast');
    expect(found.map(({ longest, isBetweenGroups }) => [longest, isBetweenGroups])).toEqual([
      [8, false],
      [8, false],
    ]);
  });

  it('are gone with a ball for each group', () => {
    const [band] = bandsOf(COLUMNS);
    if (!band) throw new Error('no band');
    expect(
      checkedPlan({
        ...COLUMNS,
        patterns: [{ ...band, groups: band.groups.map((group) => ({ ...group, hasOwnBall: true })) }],
      }).findings,
    ).toEqual([]);
  });

  it('of main behind a solid figure are told apart from those of the contrast', () => {
    const plan = checkedPlan(
      projectWith({ motif: ['XXXXXX', 'X.....'], copies: [1], stitches: 12, rows: 4, piece: FIVE }),
    );
    expect(only(plan, 'long-floats').map(({ role, yarn, longest }) => [role, yarn, longest])).toEqual([['main', 0, 6]]);
  });

  it('are noted, not warned of, in a lined piece and in both halves of a hem', () => {
    const lined = checkedPlan({ ...COLUMNS, piece: { ...COLUMNS.piece, isLined: true } });
    expect(lined.findings.map(({ code }) => code)).toEqual(['lined-floats']);
    const hemmed = checkedPlan({ ...COLUMNS, piece: { ...COLUMNS.piece, hemRows: 5 } });
    expect(hemmed.findings.map(({ code }) => code)).toEqual(['lined-floats']);
  });

  it('are told apart where they leave the hem', () => {
    // Rows 2–3 in the hem, row 4 in the body; the hem is sewn down, so no row joins it.
    const plan = checkedPlan({
      ...COLUMNS,
      piece: { ...COLUMNS.piece, hemRows: 3, begins: 'closed' },
      patterns: bandsOf(COLUMNS).map((band) => ({ ...band, position: { kind: 'from-row' as const, row: 2 } })),
    });
    expect(plan.findings.map(({ code, rows }) => [code, ...rows])).toEqual([
      ['long-floats', 4, 4],
      ['lined-floats', 2, 3],
    ]);
  });

  it('that each copy repeats are gathered for reading', () => {
    // Solid blocks of six with a blank column: main floats over six behind each of three copies.
    const plan = checkedPlan(projectWith({ motif: ['XXXXXX.'], copies: [3], stitches: 30, rows: 1, piece: FIVE }));
    expect(only(plan, 'long-floats')).toHaveLength(3);
    const gathered = gatherFindings(plan.findings.filter(({ code }) => code === 'long-floats'));
    expect(gathered.map(({ more, rows }) => [more, ...rows])).toEqual([[2, 1, 1]]);
  });
});

describe('long carries', () => {
  // A slanting line: the contrast jumps six needles from row to row.
  const SLANT = projectWith({
    motif: ['............X', '......X......', 'X............'],
    copies: [1],
    stitches: 20,
    rows: 5,
    piece: FIVE,
  });

  it('one after the other are one finding', () => {
    expect(only(checkedPlan(SLANT), 'long-carry')).toMatchObject([{ rows: [2, 4], longest: 6, count: 2, yarn: 1 }]);
  });

  it('are noted in a lined piece', () => {
    const plan = checkedPlan({ ...SLANT, piece: { ...SLANT.piece, isLined: true } });
    expect(only(plan, 'lined-carry')).toHaveLength(1);
    expect(only(plan, 'long-carry')).toHaveLength(0);
  });
});

describe('too many yarns in a row', () => {
  it.each([
    {
      motif: ['XO', 'X.'],
      expected: [
        // Of two contrast stitches one may stay beside main.
        {
          rows: [2, 2],
          yarns: 3,
          count: 1,
          laid: 2,
          change: { stitches: 1, row: 2, yarn: 1, needles: [{ first: -1 }] },
        },
      ],
      why: 'main and two contrasts',
    },
    {
      motif: ['XXO'],
      expected: [{ laid: 3, change: { stitches: 1, row: 1, yarn: 2 } }],
      why: 'the yarn of which there is least is the one to change',
    },
    { motif: ['XX', 'OO', 'X.'], expected: [], why: 'two contrasts on different rows' },
    {
      motif: ['XO', 'X.', 'OX', 'X.'],
      expected: [{ rows: [2, 4], yarns: 3, count: 2, laid: 4, change: { stitches: 2, row: 2 } }],
      why: 'rows apart are counted together',
    },
  ])('$why', ({ motif, expected }) => {
    const rows = motif.length;
    const plan = checkedPlan(projectWith({ motif, copies: [1], stitches: 6, rows, band: { unit: 'whole' } }));
    expect(only(plan, 'many-yarns')).toMatchObject(expected);
  });

  it('does not count main where it knits nothing', () => {
    const plan = checkedPlan(projectWith({ motif: ['XO'], copies: [3], stitches: 6, rows: 1 }));
    expect(only(plan, 'many-yarns')).toEqual([]);
  });

  it('does not count balls of one yarn', () => {
    const plan = checkedPlan(projectWith({ ...TWO_COLUMNS, band: byHand(-5, 4), group: { hasOwnBall: true } }));
    expect(only(plan, 'many-yarns')).toEqual([]);
  });
});

describe('end-needle selection', () => {
  it('is warned of with groups that stand alone', () => {
    const plan = checkedPlan({ ...COLUMNS, patterns: bandsOf(COLUMNS).map((band) => ({ ...band, endNeedles: true })) });
    expect(only(plan, 'contrast-to-edges')).toMatchObject([{ rows: [2, 4] }]);
    expect(plan.rows.flatMap(({ wraps }) => wraps)).toEqual([]);
  });

  it('is warned of on the rows whose own stitches leave too much plain, not by the width of the group', () => {
    // 16 stitches, L8–R8, a group on L6–R6: row 2 knits L6 and R6, two from each edge; row 3 knits L1, seven and eight.
    const plan = checkedPlan(
      projectWith({
        motif: ['.....X......', 'X..X..X..X.X'],
        copies: [1],
        stitches: 16,
        rows: 4,
        piece: FIVE,
        band: { ...byHand(-6), unit: 'whole', endNeedles: true },
      }),
    );
    expect(only(plan, 'contrast-to-edges')).toMatchObject([{ rows: [3, 3] }]);
  });

  it('is right for a pattern all over', () => {
    const plan = checkedPlan(
      projectWith({
        motif: ['X..', '.X.'],
        copies: [6],
        stitches: 20,
        rows: 2,
        piece: FIVE,
        band: { endNeedles: true },
      }),
    );
    expect(only(plan, 'contrast-to-edges')).toEqual([]);
  });
});

describe('a folded hem', () => {
  const hemmed = (steps: readonly EdgeStep[], hemRows = 6) =>
    only(
      checkedPlan({
        ...projectWith({ motif: ['X'], copies: [1], stitches: 12, rows: 20 }),
        patterns: [],
        piece: { ...START_PIECE, hemRows, shape: { kind: 'steps', stitches: 12, rows: 20, steps } },
      }),
      'hem-loops',
    );

  it('is warned of where it is shaped so that loops and needles differ', () => {
    const inside = [{ row: 4, left: 1, right: 1 }];
    expect(hemmed(inside)).toMatchObject([{ rows: [6, 6], loops: 12, hungOn: 14 }]);
    expect(hemmed([{ row: 6, left: -1, right: 0 }])).toMatchObject([{ rows: [6, 6], loops: 12, hungOn: 11 }]);
    expect(hemmed([{ row: 7, left: 1, right: 1 }])).toEqual([]);
    expect(hemmed([...inside, { row: 5, left: -1, right: -1 }])).toEqual([]);
    expect(hemmed(inside, 0)).toEqual([]);
  });
});

describe('letters', () => {
  // The knit side is seen from the other side than the needles: what is drawn as on the needles is worn mirrored.
  it.each([
    { shows: 'worn', finishedFace: 'knit', isMirrored: false, isBackwards: false },
    { shows: 'worn', finishedFace: 'knit', isMirrored: true, isBackwards: true },
    { shows: 'needles', finishedFace: 'knit', isMirrored: false, isBackwards: true },
    { shows: 'needles', finishedFace: 'knit', isMirrored: true, isBackwards: false },
    { shows: 'needles', finishedFace: 'purl', isMirrored: false, isBackwards: false },
    { shows: 'worn', finishedFace: 'purl', isMirrored: true, isBackwards: true },
  ] as const)(
    'drawn as $shows on a $finishedFace face, mirrored: $isMirrored, are backwards: $isBackwards',
    ({ shows, finishedFace, isMirrored, isBackwards }) => {
      const given = { motif: ['XX', 'X.'], copies: [1], stitches: 8, rows: 4, shows, piece: { finishedFace } };
      const project = projectWith({ ...given, group: { isMirrored } });
      expect(only(checkedPlan(project), 'mirrored-lettering')).toEqual([]);
      const motifs = project.motifs.map((motif) => ({ ...motif, isLettering: true }));
      const expected = [{ group: 0, motif: 'trial motif', rows: [2, 3], isMirrored }];
      expect(only(checkedPlan({ ...project, motifs }), 'mirrored-lettering')).toMatchObject(
        isBackwards ? expected : [],
      );
    },
  );
});

describe('a piece for an infant', () => {
  it('is warned of every float, however short', () => {
    const infant = projectWith({ motif: ['X.X'], copies: [1], stitches: 7, rows: 1, piece: { isInfant: true } });
    // Main floats behind each X, the contrast between them.
    expect(only(checkedPlan(infant), 'infant-floats')).toMatchObject([{ rows: [1, 1], count: 3 }]);
  });
});

describe('a faint contrast', () => {
  const yarns = (main: string, contrast: string) => [
    { name: 'a', colour: main, count: null, onHand: null },
    { name: 'b', colour: contrast, count: null, onHand: null },
    { name: 'unused', colour: main, count: null, onHand: null },
  ];

  it.each([
    // WCAG contrast: #767676 on #949494 is 4.5422 / 3.0335 = 1.497, #777777 on #949494 4.4781 / 3.0335 = 1.476
    { main: '#949494', contrast: '#767676', isFaint: true },
    { main: '#949494', contrast: '#595959', isFaint: false },
    { main: '#ffffff', contrast: '#ffffff', isFaint: true },
    { main: '#5d7591', contrast: '#fbf7ea', isFaint: false },
  ])('$contrast on $main: $isFaint', ({ main, contrast, isFaint }) => {
    const plan = checkedPlan(
      projectWith({ motif: ['X', '.'], copies: [1], stitches: 5, rows: 4, yarns: yarns(main, contrast) }),
    );
    expect(only(plan, 'faint-contrast').map(({ yarn, rows }) => [yarn, ...rows])).toEqual(isFaint ? [[1, 3, 3]] : []);
  });
});

describe('the order of findings', () => {
  it('is those that block first, then warnings, then notes, each from the bottom up', () => {
    const codes = checkedPlan({
      ...COLUMNS,
      machine: { ...COLUMNS.machine, chooses: 'ahead-unseen' },
      piece: { ...COLUMNS.piece, hemRows: 3, isInfant: true, begins: 'closed' },
      patterns: bandsOf(COLUMNS).map((band) => ({ ...band, position: { kind: 'from-row' as const, row: 1 } })),
    }).findings.map(({ code }) => code);
    expect(codes).toEqual(['no-set-up-row', 'infant-floats', 'lined-floats']);
  });
});
