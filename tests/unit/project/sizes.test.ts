import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Band } from '@shared/pattern/index.ts';
import { MOST_SIZES } from '@shared/piece/index.ts';
import {
  addSize,
  applyChange,
  changeCopies,
  changeOf,
  changeSize,
  freeSizeName,
  goToSize,
  projectInSize,
  removeSize,
  renameSize,
  reshapeSizes,
  sampleProject,
  currentSize,
  sizesOf,
  setBand,
  START_PIECE,
  startBand,
  type Change,
  type Project,
} from '@shared/project/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';

const rectangle = (stitches: number) => ({ kind: 'rectangle', stitches, rows: 60 }) as const;

/** Sizes S, M and L of 96, 108 and 120 stitches, M at hand, two groups of three copies. */
function threeSizes(): Project {
  const [motif] = sampleProject().motifs;
  const one: Project = {
    ...sampleProject(),
    piece: { ...START_PIECE, shape: rectangle(108) },
    bands: [startBand(motif?.id ?? '', [3, 3])],
  };
  return [
    (project: Project) => renameSize(project, 0, 'M'),
    (project: Project) => addSize(project, 'larger', 'L'),
    (project: Project) => changeSize(project, 1, { shape: rectangle(120) }),
    (project: Project) => goToSize(project, 0),
    (project: Project) => addSize(project, 'smaller', 'S'),
    (project: Project) => changeSize(project, 0, { shape: rectangle(96) }),
    (project: Project) => goToSize(project, 1),
  ].reduce((project, change) => applyChange(project, change(project)), one);
}

const names = (project: Project): string[] => sizesOf(project).map(({ name }) => name);
const stitches = (project: Project): number[] => sizesOf(project).map(({ shape }) => shape.stitches);
const copies = (project: Project): number[][] =>
  sizesOf(project).map((_, index) => projectInSize(project, index).bands[0]?.groups.map(({ across }) => across) ?? []);
const go = (project: Project, index: number): Project => applyChange(project, goToSize(project, index));
const withBand = (project: Project, to: Partial<Band>): Project =>
  applyChange(project, changeOf('rule', setBand(0, to)));

describe('the sizes of a project', () => {
  it('stand smallest first, whichever is at hand', () => {
    const project = threeSizes();
    expect([names(project), stitches(project), currentSize(project)]).toEqual([['S', 'M', 'L'], [96, 108, 120], 1]);
    for (const index of [0, 2]) {
      const there = go(project, index);
      expect([names(there), stitches(there), currentSize(there)]).toEqual([['S', 'M', 'L'], [96, 108, 120], index]);
      expect(there.piece.shape.stitches).toBe([96, 108, 120][index]);
      expect(go(there, 1)).toEqual(project);
    }
  });

  it.each<[string, (project: Project) => Change]>([
    ['added smaller', (project) => addSize(project, 'smaller', 'XS')],
    ['added larger', (project) => addSize(project, 'larger', 'XL')],
    ['removed', (project) => removeSize(project, 2)],
    ['removed while at hand', (project) => removeSize(project, 1)],
    ['renamed', (project) => renameSize(project, 0, 'small')],
    ['gone to', (project) => goToSize(project, 2)],
    ['given other numbers', (project) => changeSize(project, 0, { hemRows: 20 })],
    ['given other copies', (project) => changeCopies(project, 2, 0, 1, 4)],
    ['given another kind of shape', (project) => reshapeSizes(project, 'tapered')],
  ])('%s are a change that is undone by its inverse', (_, change) => {
    const project = threeSizes();
    expect(expectChangeLaws(project, change(project))).not.toEqual(project);
  });

  it('come like the one at hand, next to it, and are taken in hand', () => {
    const project = threeSizes();
    const larger = applyChange(project, addSize(project, 'larger', 'M long'));
    expect([names(larger), stitches(larger), currentSize(larger)]).toEqual([
      ['S', 'M', 'M long', 'L'],
      [96, 108, 108, 120],
      2,
    ]);
    const smaller = applyChange(project, addSize(project, 'smaller', 'M short'));
    expect([names(smaller), currentSize(smaller)]).toEqual([['S', 'M short', 'M', 'L'], 1]);
  });

  it('go one by one, and the next larger one comes to hand', () => {
    const project = threeSizes();
    const without = (of: Project, index: number): Project => applyChange(of, removeSize(of, index));
    expect(names(without(project, 0))).toEqual(['M', 'L']);
    expect(without(project, 0).sizes.name).toBe('M');
    expect(without(project, 1).piece.shape.stitches).toBe(120);
    const last = without(without(project, 1), 1);
    expect([names(last), last.piece.shape.stitches]).toEqual([['S'], 96]);
    expect(outcome(() => removeSize(last, 0))).toMatchObject({ problem: { code: 'size-last' } });
  });

  it('may each be of another kind, and take one kind together', () => {
    const project = applyChange(
      threeSizes(),
      changeSize(threeSizes(), 0, { shape: { kind: 'steps', stitches: 90, rows: 60, steps: [] } }),
    );
    const kinds = (of: Project): string[] => sizesOf(of).map(({ shape }) => shape.kind);
    expect(kinds(project)).toEqual(['steps', 'rectangle', 'rectangle']);
    const tapered = applyChange(project, reshapeSizes(project, 'tapered'));
    expect([kinds(tapered), stitches(tapered)]).toEqual([Array(3).fill('tapered'), [90, 108, 120]]);
  });

  it('have names of their own', () => {
    const project = threeSizes();
    const code = (change: () => Change): unknown => outcome(change);
    expect(code(() => addSize(project, 'larger', 'L'))).toMatchObject({ problem: { code: 'size-name-taken' } });
    expect(code(() => renameSize(project, 0, 'M'))).toMatchObject({ problem: { code: 'size-name-taken' } });
    expect(applyChange(project, renameSize(project, 0, 'S'))).toMatchObject({ sizes: project.sizes });
    for (const name of ['', ' ', ' M', 'M ', 'one\ntwo', 'x'.repeat(25)]) {
      expect(code(() => renameSize(project, 0, name))).toMatchObject({ problem: { code: 'size-name-unusable' } });
    }
    const named = applyChange(project, renameSize(project, 0, 'size 4'));
    expect(freeSizeName(named, (number) => `size ${number}`)).toBe('size 5');
  });

  it('are 20 at most', () => {
    let project = sampleProject();
    for (let number = 2; number <= MOST_SIZES; number++) {
      project = applyChange(project, addSize(project, 'larger', `size ${number}`));
    }
    expect(names(project)).toHaveLength(20);
    expect(outcome(() => addSize(project, 'larger', 'one more'))).toMatchObject({
      problem: { code: 'sizes-too-many' },
    });
  });

  it('that are not there are a mistake of the program', () => {
    expect(() => goToSize(threeSizes(), 3)).toThrow(RangeError);
  });

  it('are the same value each time one is asked for', () => {
    const project = threeSizes();
    expect(projectInSize(project, 1)).toBe(project);
    expect(projectInSize(project, 2)).toBe(projectInSize(project, 2));
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
    const graded = applyChange(project, changeCopies(project, 2, 0, 0, 4));
    expect(copies(graded)).toEqual([
      [3, 3],
      [3, 3],
      [4, 3],
    ]);
    expect(copies(go(graded, 2))).toEqual(copies(graded));
    expect(applyChange(graded, changeCopies(graded, 2, 0, 0, 3))).toEqual(project);
  });

  it('stay what they are in other sizes when those of the size at hand change', () => {
    const project = threeSizes();
    const graded = applyChange(project, changeCopies(project, 1, 0, 1, 2));
    expect(copies(graded)).toEqual([
      [3, 3],
      [3, 2],
      [3, 3],
    ]);
    expect(go(go(graded, 0), 1)).toEqual(graded);
  });

  it('come and go with their group', () => {
    const graded = applyChange(threeSizes(), changeCopies(threeSizes(), 2, 0, 1, 5));
    const groups = graded.bands[0]?.groups ?? [];
    expect(copies(withBand(graded, { groups: groups.slice(1) }))).toEqual([[3], [3], [5]]);
    const fresh = startBand('lighthouse', [1]).groups;
    expect(copies(withBand(graded, { groups: [...fresh, ...groups] }))).toEqual([
      [1, 3, 3],
      [1, 3, 3],
      [1, 3, 5],
    ]);
  });

  it('follow their size to another name, and leave with it', () => {
    const graded = applyChange(threeSizes(), changeCopies(threeSizes(), 2, 0, 0, 4));
    expect(copies(applyChange(graded, renameSize(graded, 2, 'XL')))).toEqual([
      [3, 3],
      [3, 3],
      [4, 3],
    ]);
    const longer = applyChange(graded, addSize(go(graded, 2), 'larger', 'XL'));
    expect(copies(longer)).toEqual([
      [3, 3],
      [3, 3],
      [4, 3],
      [4, 3],
    ]);
    expect(applyChange(graded, removeSize(graded, 2)).bands).toEqual(threeSizes().bands);
  });
});

describe('what was chosen in one size', () => {
  const first = [-50 as Slot, 10 as Slot];

  it('stays in it, and the others have the best choice', () => {
    const project = withBand(threeSizes(), { choice: 2 });
    expect([0, 1, 2].map((index) => projectInSize(project, index).bands[0]?.choice)).toEqual([0, 2, 0]);
    expect(go(go(project, 2), 1)).toEqual(project);
  });

  it('by hand stays in it, and the others are found by the rule', () => {
    const rule = { kind: 'by-hand', first, before: { rule: { kind: 'even' }, choice: 3 } } as const;
    const project = withBand(threeSizes(), { rule });
    expect(projectInSize(project, 0).bands[0]?.rule).toEqual({ kind: 'even' });
    expect(go(go(project, 0), 1)).toEqual(project);
  });

  it('is found by the rule of all sizes, when that was changed meanwhile', () => {
    const there = go(withBand(threeSizes(), { choice: 2 }), 2);
    const changed = withBand(there, { rule: { kind: 'gaps', stitches: 20 } });
    expect(go(changed, 1).bands[0]).toMatchObject({ rule: { kind: 'gaps', stitches: 20 }, choice: 2 });
  });

  it('is all there is where no rule found it', () => {
    const project = withBand(threeSizes(), { rule: { kind: 'by-hand', first } });
    expect(projectInSize(project, 2).bands).toEqual(project.bands);
  });
});
