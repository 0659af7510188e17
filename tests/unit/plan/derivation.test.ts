/** How computed numbers come about: the terms, and what is said of them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { gradedCounts, type Piece, type Position } from '@shared/piece/index.ts';
import type { PlacementChoice, Share } from '@shared/placement/index.ts';
import {
  floatLimitDerivations,
  makePlan,
  needleDerivations,
  rowsDerivation,
  setUpDerivation,
  spacesDerivation,
  yarnDerivation,
} from '@shared/plan/index.ts';
import { pieceIn, START_MACHINE, START_PIECE, type ProjectAt } from '@shared/project/index.ts';
import { howWords } from '@shared/words/how.ts';
import { words } from '@shared/words/index.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../fabric/pieces.ts';

function placed(project: ProjectAt, rank = 0) {
  const plan = makePlan(pieceIn(project));
  const [band] = bandsOf(plan);
  const choice = band?.choices[rank];
  if (!band || !choice) throw new Error('The band is placed');
  return { plan, band, choice, spaces: spacesDerivation(band, choice) };
}

/** Solid groups of so many stitches. */
function solid(width: number, groups: number, stitches: number, piece: Partial<Piece> = {}, band: Partial<Band> = {}) {
  const motif = ['X'.repeat(width)];
  const copies = Array.from({ length: groups }, () => 1);
  return projectWith({ motif, copies, stitches, rows: 9, piece, band: { unit: 'whole', ...band } });
}

const twelve = (piece: Partial<Piece> = {}, band: Partial<Band> = {}): ProjectAt =>
  projectWith({ motif: BLANK_FIRST_12_BY_31, copies: [3, 3], stitches: 120, rows: 100, piece, band });

describe('how the spaces of a band come about', () => {
  // Common practice, no source: 120 stitches and two figures of 35 leave 50; the eye sees 13, 24, 13.
  it.each<[string, ProjectAt, string[]]>([
    [
      'needles are whole',
      twelve({}, { position: { kind: 'from-row', row: 5 } }),
      [
        'Row 5 has 120 stitches; the figures take 70: 50 are left.',
        'At each edge: 13, for 50 stitches left ÷ 4 = 12.5; needles are whole.',
        'Between: 24, for 50 stitches left ÷ 2 = 25; needles are whole.',
      ],
    ],
    [
      'the seam takes some of the margins',
      solid(20, 2, 64, { seamAllowance: { left: 2, right: 2 } }),
      [
        'Row 5 has 64 stitches; the figures take 40, the seam 4: 20 are left.',
        'At each edge: 7 = 20 stitches left ÷ 4 + 2 in the seam.',
        'Between: 10 = 20 stitches left ÷ 2.',
      ],
    ],
    [
      'the seam takes more at one edge',
      solid(20, 2, 63, { seamAllowance: { left: 2, right: 1 } }),
      [
        'Row 5 has 63 stitches; the figures take 40, the seam 3: 20 are left.',
        'At the left edge: 7 = 20 stitches left ÷ 4 + 2 in the seam.',
        'At the right edge: 6 = 20 stitches left ÷ 4 + 1 in the seam.',
        'Between: 10 = 20 stitches left ÷ 2.',
      ],
    ],
    [
      'every space is the same',
      solid(10, 4, 60, {}, { rule: { kind: 'even' } }),
      [
        'Row 5 has 60 stitches; the figures take 40: 20 are left.',
        'At each edge: 4 = 20 stitches left ÷ 5.',
        'Between: 4 = 20 stitches left ÷ 5.',
      ],
    ],
    [
      'margins are given, by the blocks',
      solid(20, 3, 90, {}, { rule: { kind: 'margins', stitches: 7 }, judge: 'blocks' }),
      [
        'Row 5 has 90 stitches; the pattern blocks take 60: 30 are left.',
        'At each edge: 7 = 7 as asked for.',
        'Between: 8 = (30 stitches left − 2 × 7) ÷ 2.',
      ],
    ],
    [
      'gaps are given',
      solid(20, 3, 100, {}, { rule: { kind: 'gaps', stitches: 9 } }),
      [
        'Row 5 has 100 stitches; the figures take 60: 40 are left.',
        'At each edge: 11 = (40 stitches left − 2 × 9) ÷ 2.',
        'Between: 9 = 9 as asked for.',
      ],
    ],
    [
      'there is one group',
      solid(36, 1, 120),
      ['Row 5 has 120 stitches; the figures take 36: 84 are left.', 'At each edge: 42 = 84 stitches left ÷ 2.'],
    ],
    [
      'needles are given',
      solid(20, 2, 60, {}, { rule: { kind: 'by-hand', first: [-28, 7] as never } }),
      [
        'Row 5 has 60 stitches; the figures take 40: 20 are left.',
        'At the left edge: 2, as the needles leave it.',
        'At the right edge: 3, as the needles leave it.',
        'Between: 15, as the needles leave it.',
      ],
    ],
  ])('where %s', (_, project, says) => {
    expect(howWords.spaces(placed(project).spaces)).toEqual(says);
  });

  it('says of another placing that it gives way', () => {
    const { band } = placed(twelve());
    const far = band.choices.find(({ figure }) => Math.abs((figure.gaps[0] ?? 0) - 25) > 2) as PlacementChoice;
    expect(howWords.spaces(spacesDerivation(band, far)).at(-1)).toMatch(
      /^Between: \d+, for 50 .* = 25; this placing gives way there\.$/,
    );
  });

  it('adds up, whatever the rule: spaces, figures and seam to the row, and the shares to what is left', () => {
    const given = fc.record({
      width: fc.integer({ min: 1, max: 9 }),
      groups: fc.integer({ min: 1, max: 4 }),
      more: fc.integer({ min: 12, max: 60 }),
      seam: fc.nat(2),
      judge: fc.constantFrom('figure' as const, 'blocks' as const),
      rule: fc.constantFrom(
        { kind: 'seam' } as const,
        { kind: 'even' } as const,
        { kind: 'margins', stitches: 2 } as const,
        { kind: 'gaps', stitches: 2 } as const,
      ),
    });
    const exact = (share: Share): number => {
      if (share.by === 'hand') throw new Error('A rule shares');
      return share.by === 'given' ? share.stitches : share.exact;
    };
    fc.assert(
      fc.property(given, ({ width, groups, more, seam, judge, rule }) => {
        fc.pre(groups > 1 || rule.kind !== 'margins');
        const project = solid(
          width,
          groups,
          width * groups + more,
          { seamAllowance: { left: seam, right: seam } },
          { rule, judge },
        );
        const { spaces } = placed(project);
        const { stitches, taken, left, margins, gaps, margin, gap } = spaces;
        expect(taken).toBe(width * groups);
        expect(left + taken + 2 * seam).toBe(stitches);
        expect([...margins, ...gaps].reduce((sum, space) => sum + space, 0)).toBe(left + 2 * seam);
        expect(2 * exact(margin) + (gap ? (groups - 1) * exact(gap) : 0)).toBeCloseTo(left, 6);
      }),
      { numRuns: 60 },
    );
  });
});

describe('how the left-hand needles come about', () => {
  it('counts from the edge, and from the group before', () => {
    const { band, choice } = placed(twelve({}, { position: { kind: 'from-row', row: 5 } }));
    // The blocks stand at L48 and R12; their first column is blank and counts with the space.
    expect(needleDerivations(band, choice).map(howWords.needle)).toEqual([
      'L48: row 5 begins at L60, and 12 plain needles come before it; with 1 blank column the space is 13.',
      'R12: the group before ends at L13, and 23 plain needles come before it; with 1 blank column the space is 24.',
    ]);
  });

  it('leads from needle to needle over the whole row', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 90 }),
        fc.constantFrom('figure' as const, 'blocks' as const),
        (stitches, judge) => {
          const project = projectWith({
            motif: ['..XX.'],
            copies: [1, 2],
            stitches,
            rows: 5,
            band: { judge, unit: 'whole' },
          });
          const { band, choice } = placed(project);
          for (const { first, behind, isBehindEdge, plain, blank, space } of needleDerivations(band, choice)) {
            expect(first).toBe(behind + plain + Number(!isBehindEdge));
            expect([plain + blank, blank >= 0]).toEqual([space, true]);
            if (judge === 'blocks') expect(blank).toBe(0);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('how rows and set-up come about', () => {
  const said = (position: Position, piece: Partial<Piece> = {}): string => {
    const { plan, band } = placed(twelve(piece, { position }));
    return howWords.rows(rowsDerivation(band, position, plan));
  };
  // Common practice, no source: a hem of 100 rows folded in half, a motif of 31 rows on its front half.
  it('centres a motif on the front of a hem, and sets up two rows before it', () => {
    const centred = { kind: 'centred', section: 'shown', oddRow: 'below' } as const;
    const project = twelve(
      { hemRows: 100, shape: { kind: 'rectangle', stitches: 120, rows: 140 } },
      { position: centred },
    );
    const { plan, band } = placed(project);
    expect(howWords.rows(rowsDerivation(band, centred, plan))).toBe(
      'In the middle of rows 51–100, which are 50: less 31 of the pattern, 19 are left, 10 below and 9 above.',
    );
    expect(howWords.setUp(setUpDerivation(band, START_MACHINE))).toBe(
      'The needles of row 61 are chosen while row 60 is knitted. Before that row the counter reads 61 − 2 = 59.',
    );
    expect(howWords.setUp(setUpDerivation(band, { chooses: 'by-hand' }))).toBe(
      'Needles are chosen by hand, row by row.',
    );
    expect(howWords.setUp({ row: 1, counter: null, chooses: 'ahead-seen' })).toBe(
      'No row comes before row 1 that could choose its needles.',
    );
  });

  it('counts from an edge, above a hem, and from a given row', () => {
    expect(said({ kind: 'from-row', row: 25 })).toBe('Row 25 is given, and the pattern is 31 rows high: rows 25–55.');
    expect(said({ kind: 'from-edge', edge: 'lower', section: 'piece', rows: 4 })).toBe(
      '4 plain rows above the lower edge of rows 1–100, and the pattern is 31 rows high: rows 5–35.',
    );
    expect(said({ kind: 'from-edge', edge: 'upper', section: 'piece', rows: 1 })).toBe(
      '1 plain row below the upper edge of rows 1–100, and the pattern is 31 rows high: rows 69–99.',
    );
    expect(said({ kind: 'above-hem', rows: 1 }, { hemRows: 20 })).toBe(
      'The hem ends on row 20, 1 row above it stays plain, and the pattern is 31 rows high: rows 22–52.',
    );
  });
});

describe('how the longest float comes about', () => {
  const { gauges } = placed(twelve()).plan;
  // 28 stitches in 10 cm: 25 mm are 7 of them.
  it.each([
    [
      { stitches: 5, mm: 25 },
      '25 mm hold 7 whole stitches at 28 stitches and 40 rows in 10 cm; 5 stitches are given. The smaller counts: 5.',
    ],
    [
      { stitches: 9, mm: 25 },
      '25 mm hold 7 whole stitches at 28 stitches and 40 rows in 10 cm; 9 stitches are given. The smaller counts: 7.',
    ],
    [{ stitches: 6, mm: null }, 'Only stitches count: 6, as given.'],
  ])('of %o', (floatLimit, says) => {
    expect(floatLimitDerivations({ floatLimit }, { gauges }).map((one) => howWords.floatLimit(one, 'cm'))).toEqual([
      says,
    ]);
  });
});

describe('how the length of a yarn comes about', () => {
  it('adds stitches, floats, carries and ends, and the share for winding off', () => {
    const { plan } = placed(twelve());
    const contrast = yarnDerivation(plan, 1);
    if (!contrast) throw new Error('The figure takes yarn');
    const { use, loops } = contrast;
    expect(use.stitchesMm + use.floatsMm + use.carriesMm + use.tailsMm).toBeCloseTo(use.totalMm, 6);
    // Munden, J. Text. Inst. 50 (1959): l = √(ks / S); 2.8 × 4 = 11.2 stitches in a cm² at rest after knitting, ks 19.
    expect(loops.map(({ perCm2, ks, mm }) => [perCm2, ks, mm])).toEqual([
      [expect.closeTo(11.2, 9), 19, 10 * Math.sqrt(19 / 11.2)],
    ]);
    const says = howWords.yarn(contrast, 'cm');
    expect(says[0]).toMatch(/^\d+ stitches of 13 mm: [\d.]+ m; floats: [\d.]+ m; .*ends: [\d.]+ m\.$/);
    expect(says[1]).toContain(`with 10 % more to wind off ${words.lengths.yarn(use.totalMm * 1.1, 'cm')}`);
    expect(says[2]).toContain('13 mm of yarn in a stitch = 10 × √(19 ÷ 11.2)');
    expect(yarnDerivation(plan, 2)).toBeNull();
  });
});

describe('how the numbers of a proposed size come about', () => {
  const shape = (stitches: number, rows: number) => ({ ...START_PIECE.shape, stitches, rows });
  it.each([
    ['above', 112, 160, 'Stitches: 112 = 104 + (104 − 96).', 'Rows: 160 = 150 + (150 − 140).'],
    ['below', 88, 130, 'Stitches: 88 = 96 + (96 − 104).', 'Rows: 130 = 140 + (140 − 150).'],
    ['between', 100, 145, 'Stitches: 100 = (96 + 104) ÷ 2.', 'Rows: 145 = (140 + 150) ÷ 2.'],
    [
      'between',
      101,
      145,
      'Stitches: 101, near (96 + 104) ÷ 2 = 100, which lengths that were given and whole counts move.',
      'Rows: 145 = (140 + 150) ÷ 2.',
    ],
  ] as const)('%s, %i × %i', (lies, stitches, rows, ...says) => {
    const counts = gradedCounts(shape(96, 140), shape(104, 150), lies, shape(stitches, rows));
    expect(counts.map(howWords.graded)).toEqual(says);
  });
});

describe('how the repeat comes about', () => {
  it.each([
    [
      ['X.X.', 'X.X.'],
      [
        'Across: each column is the same as the one 2 further on, and with no smaller number is that so of all. 4 columns are 2 copies of 2.',
        'Up: each row is the same as the one 1 further on, and with no smaller number is that so of all. 2 rows are 2 copies of 1.',
      ],
    ],
    [
      ['X.X.X'],
      [
        'Across: each column is the same as the one 2 further on, and with no smaller number is that so of all. 5 columns are 2 copies of 2 and 1 of the next.',
        'Up: there is one row.',
      ],
    ],
    [
      ['X..', '.X.'],
      ['Across: no fewer than all 3 columns come again.', 'Up: no fewer than all 2 rows come again.'],
    ],
  ])('of %j', (drawing, says) => {
    expect(howWords.repeat(measure(gridFromText(drawing, '.X'), 0))).toEqual(says);
  });

  it('is called the same before it is loaded', () => {
    expect(words.understanding.how).toBe(howWords.label(howWords.of.repeat));
  });
});
