import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { MOST_SIZES } from '@shared/piece/index.ts';
import {
  projectAt,
  addPiece,
  addSize,
  afterChange,
  applyChange,
  changeCopies,
  changeSize,
  freeSizeName,
  inSize,
  removeSize,
  renameSize,
  reshapeSizes,
  sampleProject,
  currentSize,
  sizesOf,
  startBand,
  type Change,
  type ProjectAt,
} from '@shared/project/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';
import { threeSizes, withBand } from './three-sizes.ts';

const names = (project: ProjectAt): string[] => sizesOf(project).map(({ name }) => name);
const stitches = (project: ProjectAt): number[] => sizesOf(project).map(({ shape }) => shape.stitches);
const copies = (project: ProjectAt): number[][] =>
  sizesOf(project).map((_, index) => bandsOf(inSize(project, index))[0]?.groups.map(({ across }) => across) ?? []);
const go = inSize;

describe('the sizes of a project', () => {
  it('stand smallest first, whichever is looked at', () => {
    const project = threeSizes();
    expect([names(project), stitches(project), currentSize(project)]).toEqual([['S', 'M', 'L'], [96, 108, 120], 1]);
    for (const index of [0, 2]) {
      const there = go(project, index);
      expect([names(there), stitches(there), currentSize(there)]).toEqual([['S', 'M', 'L'], [96, 108, 120], index]);
      expect(there.piece.shape.stitches).toBe([96, 108, 120][index]);
      expect(go(there, 1)).toEqual(project);
    }
  });

  it.each<[string, (project: ProjectAt) => Change]>([
    ['added below the smallest', (project) => addSize(project, 0, 'XS', 'new')],
    ['added between two', (project) => addSize(project, 2, 'M long', 'new')],
    ['added above the largest', (project) => addSize(project, 3, 'XL', 'new')],
    ['removed', (project) => removeSize(project, 2)],
    ['removed while at hand', (project) => removeSize(project, 1)],
    ['renamed', (project) => renameSize(project, 0, 'small')],
    ['given other numbers', (project) => changeSize(project, 0, { hemRows: 20 })],
    ['given other copies', (project) => changeCopies(project, 2, 0, 1, 4)],
    ['given another kind of shape', (project) => reshapeSizes(project, 'tapered')],
  ])('%s are a change that is undone by its inverse', (_, change) => {
    const project = threeSizes();
    expect(expectChangeLaws(project, change(project))).not.toEqual(project);
  });

  // Worked by hand from 96, 108 and 120 stitches: half of 12 more, or 12 once more.
  it.each([
    { at: 0, stands: ['new', 'S', 'M', 'L'], has: 84 },
    { at: 1, stands: ['S', 'new', 'M', 'L'], has: 102 },
    { at: 2, stands: ['S', 'M', 'new', 'L'], has: 114 },
    { at: 3, stands: ['S', 'M', 'L', 'new'], has: 132 },
  ])('come at place $at with the middle of those beside, or the last difference', ({ at, stands, has }) => {
    const project = threeSizes();
    const added = afterChange(project, addSize(project, at, 'new', 'new'));
    expect([names(added), stitches(added)[at], added.at]).toEqual([stands, has, project.at]);
    expect(stitches(added).toSpliced(at, 1)).toEqual([96, 108, 120]);
  });

  it('come in every piece, each from its own sizes', () => {
    const project = threeSizes();
    const { change } = addPiece(project, 'back', 'back');
    const two = projectAt(applyChange(project.whole, change), { piece: 'back', size: 'large' });
    const { shape } = two.piece;
    const wide = afterChange(two, changeSize(two, 2, { shape: { ...shape, stitches: shape.stitches + 20 } }));
    const added = afterChange(wide, addSize(wide, 3, 'XL', 'new'));
    expect(stitches(added)).toEqual([0, 0, 20, 40].map((more) => shape.stitches + more));
    expect(stitches(projectAt(added.whole, { piece: project.at.piece }))).toEqual([96, 108, 120, 132]);
  });

  it('come at no other place', () => {
    for (const at of [-1, 4]) expect(() => addSize(threeSizes(), at, 'new', 'new')).toThrow(RangeError);
  });

  it('go one by one, but for the last', () => {
    const project = threeSizes();
    const without = (of: ProjectAt, index: number): ProjectAt => afterChange(of, removeSize(of, index));
    expect([names(without(project, 0)), stitches(without(project, 0))]).toEqual([
      ['M', 'L'],
      [108, 120],
    ]);
    const last = without(without(project, 1), 1);
    expect([names(last), last.piece.shape.stitches]).toEqual([['S'], 96]);
    expect(outcome(() => removeSize(last, 0))).toMatchObject({ problem: { code: 'size-last' } });
  });

  it('may each be of another kind, and take one kind together', () => {
    const project = afterChange(
      threeSizes(),
      changeSize(threeSizes(), 0, { shape: { kind: 'steps', stitches: 90, rows: 60, steps: [] } }),
    );
    const kinds = (of: ProjectAt): string[] => sizesOf(of).map(({ shape }) => shape.kind);
    expect(kinds(project)).toEqual(['steps', 'rectangle', 'rectangle']);
    const tapered = afterChange(project, reshapeSizes(project, 'tapered'));
    expect([kinds(tapered), stitches(tapered)]).toEqual([Array(3).fill('tapered'), [90, 108, 120]]);
  });

  it('have names of their own', () => {
    const project = threeSizes();
    const code = (change: () => Change): unknown => outcome(change);
    expect(code(() => addSize(project, 3, 'L', 'new'))).toMatchObject({ problem: { code: 'size-name-taken' } });
    expect(code(() => renameSize(project, 0, 'M'))).toMatchObject({ problem: { code: 'size-name-taken' } });
    expect(afterChange(project, renameSize(project, 0, 'S'))).toMatchObject({ sizes: project.sizes });
    for (const name of ['', ' ', ' M', 'M ', 'one\ntwo', 'x'.repeat(25)]) {
      expect(code(() => renameSize(project, 0, name))).toMatchObject({ problem: { code: 'size-name-unusable' } });
    }
    const named = afterChange(project, renameSize(project, 0, 'size 4'));
    expect(freeSizeName(named, (number) => `size ${number}`)).toBe('size 5');
  });

  it('are 20 at most', () => {
    let project = projectAt(sampleProject());
    for (let number = 2; number <= MOST_SIZES; number++) {
      project = afterChange(project, addSize(project, number - 1, `size ${number}`, `size-${number}`));
    }
    expect(names(project)).toHaveLength(20);
    expect(outcome(() => addSize(project, 20, 'one more', 'new'))).toMatchObject({
      problem: { code: 'sizes-too-many' },
    });
  });

  it('that are not there are a mistake of the program', () => {
    expect(() => inSize(threeSizes(), 3)).toThrow(RangeError);
  });

  it('are the same value each time one is asked for', () => {
    const project = threeSizes();
    expect(inSize(project, 1)).toBe(project);
    expect(inSize(project, 2)).toBe(inSize(project, 2));
  });
});

describe('copies in each size', () => {
  it('are alike until one size is given others', () => {
    const project = threeSizes();
    expect(copies(project)).toEqual([
      [3, 3],
      [3, 3],
      [3, 3],
    ]);
    const graded = afterChange(project, changeCopies(project, 2, 0, 0, 4));
    expect(copies(graded)).toEqual([
      [3, 3],
      [3, 3],
      [4, 3],
    ]);
    expect(copies(go(graded, 2))).toEqual(copies(graded));
    expect(afterChange(graded, changeCopies(graded, 2, 0, 0, 3))).toEqual(project);
  });

  it('stay what they are in other sizes when those of the size at hand change', () => {
    const project = threeSizes();
    const graded = afterChange(project, changeCopies(project, 1, 0, 1, 2));
    expect(copies(graded)).toEqual([
      [3, 3],
      [3, 2],
      [3, 3],
    ]);
    expect(go(go(graded, 0), 1)).toEqual(graded);
  });

  it('come and go with their group', () => {
    const graded = afterChange(threeSizes(), changeCopies(threeSizes(), 2, 0, 1, 5));
    const groups = bandsOf(graded)[0]?.groups ?? [];
    expect(copies(withBand(graded, { groups: groups.slice(1) }))).toEqual([[3], [3], [5]]);
    const fresh = startBand('lighthouse', [1]).groups;
    expect(copies(withBand(graded, { groups: [...fresh, ...groups] }))).toEqual([
      [1, 3, 3],
      [1, 3, 3],
      [1, 3, 5],
    ]);
  });

  it('of a size that is added are whole: halfway and no more between two, those of the last at an end', () => {
    const more = afterChange(threeSizes(), changeCopies(threeSizes(), 2, 0, 0, 6));
    const graded = afterChange(more, changeCopies(more, 2, 0, 1, 5));
    const added = (at: number): number[] | undefined =>
      copies(afterChange(graded, addSize(graded, at, 'new', 'new')))[at];
    // Between 3 and 6 are 4.5 copies, between 3 and 5 are 4.
    expect([0, 1, 2, 3].map(added)).toEqual([
      [3, 3],
      [3, 3],
      [4, 4],
      [6, 5],
    ]);
  });

  it('follow their size to another name, and leave with it', () => {
    const graded = afterChange(threeSizes(), changeCopies(threeSizes(), 2, 0, 0, 4));
    expect(copies(afterChange(graded, renameSize(graded, 2, 'XL')))).toEqual([
      [3, 3],
      [3, 3],
      [4, 3],
    ]);
    const longer = afterChange(graded, addSize(graded, 3, 'XL', 'new'));
    expect(copies(longer)).toEqual([
      [3, 3],
      [3, 3],
      [4, 3],
      [4, 3],
    ]);
    expect(bandsOf(afterChange(graded, removeSize(graded, 2)))).toEqual(bandsOf(threeSizes()));
  });
});

describe('what was chosen in one size', () => {
  const first = [-50 as Slot, 10 as Slot];

  it('stays in it, and the others have the best choice', () => {
    const project = withBand(threeSizes(), { choice: 2 });
    expect([0, 1, 2].map((index) => bandsOf(inSize(project, index))[0]?.choice)).toEqual([0, 2, 0]);
    expect(go(go(project, 2), 1)).toEqual(project);
  });

  it('by hand stays in it, and the others are found by the rule', () => {
    const rule = { kind: 'by-hand', first, before: { rule: { kind: 'even' }, choice: 3 } } as const;
    const project = withBand(threeSizes(), { rule });
    expect(bandsOf(inSize(project, 0))[0]?.rule).toEqual({ kind: 'even' });
    expect(go(go(project, 0), 1)).toEqual(project);
  });

  it('is found by the rule of all sizes, when that was changed meanwhile', () => {
    const there = go(withBand(threeSizes(), { choice: 2 }), 2);
    const changed = withBand(there, { rule: { kind: 'gaps', stitches: 20 } });
    expect(bandsOf(go(changed, 1))[0]).toMatchObject({ rule: { kind: 'gaps', stitches: 20 }, choice: 2 });
  });

  it('is all there is where no rule found it', () => {
    const project = withBand(threeSizes(), { rule: { kind: 'by-hand', first } });
    expect(bandsOf(inSize(project, 2))).toEqual(bandsOf(project));
  });
});
