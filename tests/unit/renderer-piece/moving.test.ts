/** Moving groups on the piece: how far they go, what lines up, and what is read out. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import { afterChange, startBand, type ProjectAt } from '@shared/project/index.ts';
import { asDragged, readingOf, spaceRun } from '../../../src-renderer/piece/moving/reading.ts';
import { sayReading } from '../../../src-renderer/piece/moving/say.ts';
import { changeTo, groundOf, raised, standingOf, walk } from '../../../src-renderer/piece/moving/standing.ts';
import { planOf, twoGroups } from './projects.ts';

/** L8–L6 and R4–R6 on needles L10 … R10, on rows 3 and 4 of 6. */
function walked(project: ProjectAt, group: number, first: number, firstRow: number, band = 0) {
  const plan = planOf(project);
  const { standing, stop } = walk(groundOf(plan, band), standingOf(plan, band), group, { first, firstRow });
  return { first: standing.first, firstRow: standing.firstRow, stop };
}

const withSecondBand = (row: number): ProjectAt => {
  const project = twoGroups();
  const above: Band = {
    ...startBand('m', [1]),
    unit: 'whole',
    rule: { kind: 'by-hand', first: [-2 as Slot] },
    position: { kind: 'from-row', row },
  };
  return { ...project, patterns: [...bandsOf(project), above] };
};

describe('a group that is raised or lowered alone', () => {
  /** By how many rows the first group goes up, and where both then start. */
  it.each([
    [1, { firstRow: 3, rises: [1, 0], stop: null }],
    [5, { firstRow: 3, rises: [2, 0], stop: 'end' }],
    [-1, { firstRow: 2, rises: [0, 1], stop: null }],
    [-9, { firstRow: 1, rises: [0, 2], stop: 'end' }],
  ] as const)('by %i rows leaves the other where it is', (rows, { stop, ...rest }) => {
    const project = twoGroups();
    const plan = planOf(project);
    const from = standingOf(plan, 0);
    const gone = raised(groundOf(plan, 0), from, 0, rows);
    expect(gone).toEqual({ standing: { ...rest, first: from.first }, stop });
    const after = planOf(afterChange(project, changeTo(project, 0, groundOf(planOf(project), 0), gone.standing, from)));
    expect(standingOf(after, 0)).toEqual(gone.standing);
    expect(after.groups[1]?.firstRow).toBe(3);
  });
});

describe('a group that is moved', () => {
  it.each([
    ['arrives where nothing is in the way', 0, -4, 2, { first: [-4, 3], firstRow: 2, stop: null }],
    ['stops at the left edge', 0, -15, 3, { first: [-10, 3], firstRow: 3, stop: 'edge' }],
    ['stops at the right edge', 1, 15, 3, { first: [-8, 7], firstRow: 3, stop: 'edge' }],
    ['stops at the group to its right', 0, 9, 3, { first: [0, 3], firstRow: 3, stop: 'group' }],
    ['stops at the group to its left', 1, -9, 3, { first: [-8, -5], firstRow: 3, stop: 'group' }],
    ['stops on the last rows', 0, -8, 9, { first: [-8, 3], firstRow: 5, stop: 'end' }],
    ['stops on the first rows', 0, -8, -3, { first: [-8, 3], firstRow: 1, stop: 'end' }],
    ['goes on sideways where it can go no higher', 0, -6, 9, { first: [-6, 3], firstRow: 5, stop: 'end' }],
  ] as const)('%s', (_, group, first, firstRow, expected) => {
    expect(walked(twoGroups(), group, first, firstRow)).toEqual(expected);
  });

  it('stops where another group of its band, which starts higher, has no rows left', () => {
    const project = twoGroups();
    const [band] = bandsOf(project) as [Band];
    const [one, other] = band.groups as [Band['groups'][number], Band['groups'][number]];
    const raised = { ...project, patterns: [{ ...band, groups: [one, { ...other, rise: 2 }] }] };
    // Rows 3 and 4, and 5 and 6 of 6.
    expect(walked(raised, 0, -8, 4)).toEqual({ first: [-8, 3], firstRow: 3, stop: 'end' });
    expect(walked(raised, 0, -8, 2)).toEqual({ first: [-8, 3], firstRow: 2, stop: null });
  });

  it('stops at a band above, and slides along under it', () => {
    // The other band lies on L2, L1 and R1, rows 5 and 6.
    expect(walked(withSecondBand(5), 0, -4, 3)).toEqual({ first: [-4, 3], firstRow: 3, stop: null });
    expect(walked(withSecondBand(5), 0, -4, 5)).toEqual({ first: [-5, 3], firstRow: 5, stop: 'band' });
  });

  it('stops where the piece gets too narrow for it', () => {
    const shape = { kind: 'tapered', stitches: 20, stitchesAtTop: 10, rows: 30, straightRows: 0 } as const;
    const { first, firstRow, stop } = walked(twoGroups({ piece: { shape } as Partial<Piece> }), 0, -8, 20);
    expect(first).toEqual([-8, 3]);
    expect(stop).toBe('edge');
    expect(firstRow).toBeGreaterThan(3);
    expect(firstRow).toBeLessThan(20);
  });

  it('becomes one by hand, from another row on only if it went up or down', () => {
    const project = twoGroups({
      band: { position: { kind: 'centred', section: 'shown', oddRow: 'below' }, choice: 0 },
    });
    const from = standingOf(planOf(project), 0);
    const aside = afterChange(
      project,
      changeTo(project, 0, groundOf(planOf(project), 0), { ...from, first: [-7 as Slot, 3 as Slot] }, from),
    );
    expect(bandsOf(aside)[0]).toMatchObject({
      rule: { kind: 'by-hand', first: [-7, 3] },
      position: { kind: 'centred' },
    });
    const up = afterChange(
      project,
      changeTo(project, 0, groundOf(planOf(project), 0), { ...from, firstRow: from.firstRow + 1 }, from),
    );
    expect(bandsOf(up)[0]?.position).toEqual({ kind: 'from-row', row: from.firstRow + 1 });
    expect(bandsOf(planOf(up))[0]?.firstRow).toBe(from.firstRow + 1);
  });
});

describe('what is read while a group moves', () => {
  const read = (project: ProjectAt, group: number, first: readonly number[], firstRow = 3, band = 0) =>
    readingOf(planOf(project), band, group, { first: first as Slot[], firstRow, rises: first.map(() => 0) });

  it('counts every needle of the row once', () => {
    // 20 needles, two groups of 3: 14 needles are left.
    for (const first of [-10, -8, -3, 0]) {
      const { spaces } = read(twoGroups(), 0, [first, 3]);
      expect(spaces.reduce((sum, space) => sum + space, 0)).toBe(14);
    }
  });

  it('says which spaces are alike', () => {
    // 4, 6, 4: both margins alike, and neither is the gap.
    const even = read(twoGroups(), 1, [-6, 3]);
    expect(even.spaces).toEqual([4, 6, 4]);
    expect(even.guides.filter(({ kind }) => kind === 'equal')).toEqual([
      { kind: 'equal', spaces: [0, 2], stitches: 4 },
    ]);
    // 2, 9, 3: none.
    expect(read(twoGroups(), 0, [-8, 4]).guides.filter(({ kind }) => kind === 'equal')).toEqual([]);
  });

  it('takes the seam off the margins before it calls them alike', () => {
    const project = twoGroups({ piece: { seamAllowance: { left: 1, right: 0 } } });
    // 4 less 1 at the left, 3 at the right.
    const { spaces, guides, acrossSeam } = read(project, 0, [-6, 4]);
    expect([spaces, acrossSeam]).toEqual([[4, 7, 3], 6]);
    expect(guides).toContainEqual({ kind: 'equal', spaces: [0, 2], stitches: 3 });
  });

  it('says when the gap is as wide as the one across the seam', () => {
    // 3, 7, 4 and 4, 7, 3.
    expect(read(twoGroups(), 0, [-7, 3]).guides).toContainEqual({ kind: 'seam', stitches: 7 });
    expect(read(twoGroups(), 0, [-6, 3]).guides.some(({ kind }) => kind === 'seam')).toBe(false);
  });

  it('says when a group is in the middle, across and up', () => {
    const project = twoGroups({ piece: { shape: { kind: 'rectangle', stitches: 21, rows: 6 } } });
    const { edges } = bandsOf(planOf(project))[0]?.question ?? { edges: { first: 0, last: 0 } };
    const middle = edges.first + 9;
    expect(read(project, 0, [middle, middle + 6]).guides).toContainEqual({ kind: 'centre', column: middle + 1.5 });
    expect(read(project, 0, [middle + 1, middle + 6]).guides.some(({ kind }) => kind === 'centre')).toBe(false);
    expect(read(project, 0, [middle, middle + 6], 3).guides).toContainEqual({ kind: 'rows', row: 3 });
    expect(read(project, 0, [middle, middle + 6], 2).guides.some(({ kind }) => kind === 'rows')).toBe(false);
  });

  it('says when an edge is in line with one of another band', () => {
    // The other band starts at L2 and ends at R1.
    const lines = read(withSecondBand(5), 0, [-5, 3]).guides.filter(({ kind }) => kind === 'line');
    expect(lines).toEqual([{ kind: 'line', column: -2 }]);
    expect(read(withSecondBand(5), 0, [-6, 3]).guides.some(({ kind }) => kind === 'line')).toBe(false);
  });

  it('finds the needles of each space', () => {
    const reading = read(twoGroups(), 0, [-8, 3]);
    expect([0, 1, 2].map((space) => spaceRun(reading, space))).toEqual([
      { first: -10, last: -9 },
      { first: -5, last: 2 },
      { first: 6, last: 9 },
    ]);
  });

  it('is said with what of each margin is clear of the seam, and on which row of a shaped piece', () => {
    const seamAllowance = { left: 1, right: 0 };
    expect(sayReading(read(twoGroups({ piece: { seamAllowance } }), 0, [-6, 4]))).toContain(
      'spaces from L to R 4 (3 clear of the seam), 7, 3 · across the seam 6',
    );
    const shape = { kind: 'tapered', stitches: 20, stitchesAtTop: 24, rows: 9, straightRows: 1 } as const;
    expect(sayReading(read(twoGroups({ piece: { shape } }), 0, [-6, 4]))).toMatch(/spaces on row 3 from L to R \d/);
  });

  it('has the band stand so in the plan, while the others stay', () => {
    const plan = planOf(withSecondBand(5));
    const reading = read(withSecondBand(5), 0, [-6, 3]);
    const [held, other] = bandsOf(asDragged(plan, reading));
    expect(held?.groups.map(({ block }) => block.first)).toEqual([-6, 3]);
    expect(other).toBe(bandsOf(plan)[1]);
    expect(asDragged(plan, null)).toBe(plan);
  });

  it('is said with its needles, spaces and what stops it', () => {
    expect(sayReading(read(twoGroups(), 1, [-6, 3]), 'group')).toBe(
      'Group 2 stops at the group beside it · needles R4–R6 · rows 3–4 · spaces from L to R 4, 6, 4 · across the seam 8 · spaces alike · as many rows below as above',
    );
  });
});
