/** Findings that are left as they are: known by code and place, so that they come back once they lie elsewhere. */
import { describe, expect, it } from 'vitest';
import { gathered, leaveFinding, leftAmong, partedByLeft, watchFinding, type Gathered } from '@shared/check/index.ts';
import { projectFromText, projectToText, afterChange, type Change, type ProjectAt } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';
import { byHand, checkedPlan, COLUMNS, TWO_COLUMNS, FIVE } from './found.ts';

function foundIn(project: ProjectAt): Gathered[] {
  const plan = checkedPlan(project);
  return gathered(plan.findings, plan.patterns);
}
const codes = (findings: readonly Gathered[]): string[] => findings.map(({ finding }) => finding.code);
const parted = (project: ProjectAt) => partedByLeft(foundIn(project), project.piece.leftAsIs);

const [FIRST] = foundIn(COLUMNS) as [Gathered];
const LEFT = afterChange(COLUMNS, leaveFinding(COLUMNS, FIRST, foundIn(COLUMNS)) as Change);

describe('a finding that is left as it is', () => {
  it('is told among those that are left, and no more among those that are watched', () => {
    expect(codes(parted(COLUMNS).watched)).toContain('long-floats');
    expect(parted(COLUMNS).left).toEqual([]);
    expect(codes(parted(LEFT).left)).toEqual(['long-floats']);
    expect(codes(parted(LEFT).watched)).not.toContain('long-floats');
  });

  it('is not left twice, and is watched again', () => {
    expect(leaveFinding(LEFT, FIRST, foundIn(LEFT))).toBeNull();
    const watched = afterChange(LEFT, watchFinding(LEFT, FIRST) as Change);
    expect(watched.piece.leftAsIs).toBeUndefined();
    expect(watched.whole).toEqual(COLUMNS.whole);
    expect(watchFinding(watched, FIRST)).toBeNull();
  });

  it('comes back where its groups stand elsewhere, and where its floats are as long but the rows are others', () => {
    const moved = settled(LEFT, {
      patterns: projectWith({ ...TWO_COLUMNS, piece: FIVE, band: byHand(-6, 4) }).patterns,
    });
    expect(moved.piece.leftAsIs).toEqual(LEFT.piece.leftAsIs);
    expect(codes(parted(moved).watched)).toContain('long-floats');
    expect(parted(moved).left).toEqual([]);
    const higher = settled(LEFT, {
      piece: { ...LEFT.piece, shape: { kind: 'rectangle', stitches: 20, rows: 9 } },
    });
    expect(codes(parted(higher).watched)).toContain('long-floats');
  });

  it('comes back where one of several places moves, though the others stay', () => {
    const columns = (third: number): ProjectAt =>
      projectWith({
        motif: ['X'],
        copies: [1, 1, 1],
        stitches: 40,
        rows: 5,
        piece: FIVE,
        band: byHand(-10, -1, third),
      });
    const before = columns(7);
    const [found] = foundIn(before) as [Gathered];
    expect(found).toMatchObject({ finding: { code: 'long-floats', longest: 8 }, alike: 1 });
    const left = afterChange(before, leaveFinding(before, found, foundIn(before)) as Change);
    expect(codes(parted(left).left)).toEqual(['long-floats']);
    const moved = settled(left, { patterns: columns(6).patterns });
    expect(codes(parted(moved).watched)).toContain('long-floats');
    expect(parted(moved).left).toEqual([]);
  });

  it('is forgotten when another is left and it is found no more', () => {
    const stale = settled(LEFT, { piece: { ...LEFT.piece, leftAsIs: ['long-floats 8-20 0a1b2c3d'] } });
    const left = afterChange(stale, leaveFinding(stale, FIRST, foundIn(stale)) as Change);
    expect(left.piece.leftAsIs).toEqual([FIRST.kind]);
  });

  it('stands for each of the places that are told with it', () => {
    const { findings, patterns } = checkedPlan(LEFT);
    const found = findings.filter(({ code }) => code === FIRST.finding.code);
    expect(found).toHaveLength(FIRST.all.length);
    expect([...leftAmong(findings, patterns, [FIRST.kind])]).toEqual(found);
    expect([...leftAmong(findings, patterns, ['long-floats 1-2 0a1b2c3d'])]).toEqual([]);
    expect([...leftAmong(findings, patterns)]).toEqual([]);
  });

  it('is never one that cannot be knitted', () => {
    const wide = projectWith({ motif: ['X.'], copies: [1], stitches: 220, rows: 3 });
    const [blocking] = foundIn(wide) as [Gathered];
    expect(blocking.finding.code).toBe('wider-than-bed');
    expect(partedByLeft([blocking], [blocking.kind])).toEqual({ watched: [blocking], left: [] });
  });

  it('is kept in the file, which refuses what is no finding', () => {
    const text = projectToText(LEFT.whole);
    expect(projectFromText(text)).toMatchObject({ pieces: [{ perSize: [{ leftAsIs: [FIRST.kind] }] }] });
    for (const wrong of ['', 'long-floats', 'long-floats 4-2 0a1b2c3', '<b> 1-2 0a1b2c3d', 7]) {
      const with_ = text.replace(JSON.stringify(FIRST.kind), JSON.stringify(wrong));
      expect(with_).not.toBe(text);
      expect(() => projectFromText(with_)).toThrow();
    }
  });
});
