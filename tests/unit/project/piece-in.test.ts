/** A piece with all that it is knitted of, as planners are given it. */
import { describe, expect, it } from 'vitest';
import { makeGrid } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import {
  type KnitAllOver,
  type KnitBand,
  addSize,
  afterChange,
  applyChange,
  changeCopies,
  changeOf,
  changeSize,
  insertPattern,
  pieceIn,
  projectAt,
  sampleProject,
  startAllOver,
  type KnitPiece,
  type PieceInSizes,
  type Project,
  type ProjectAt,
} from '@shared/project/index.ts';

const sample = projectAt(sampleProject());
const [lighthouse] = sample.motifs as [Motif];
const SMALL = { shape: { kind: 'rectangle', stitches: 60, rows: 80 }, hemRows: 4 } as const;

/** The sample with a smaller size, in which its second group has one copy, and a fill. */
const graded: Project = [
  (project: ProjectAt) => addSize(project, 0, 'S', 'small'),
  (project: ProjectAt) => changeSize(project, 0, SMALL),
  (project: ProjectAt) => changeCopies(project, 0, 0, 1, 1),
  (project: ProjectAt) => changeOf('add-all-over', insertPattern(project, 'fill-1', startAllOver(lighthouse.id, 60))),
].reduce((project, change) => afterChange(project, change(project)), sample).whole;

const SIZES = ['small', 'size-1'] as const;
const pieceAt = (project: Project, size: string): KnitPiece => pieceIn(projectAt(project, { size }));
/** With other fields of its piece. */
const withPiece = (project: Project, to: Partial<PieceInSizes>): Project => ({
  ...project,
  pieces: project.pieces.map((piece) => ({ ...piece, ...to })),
});

describe('a piece to be knitted', () => {
  it('has its motifs, its yarns and its ground in it', () => {
    const { name, patterns, yarns, mainYarn } = pieceAt(graded, 'size-1');
    expect([name, yarns, mainYarn]).toEqual(['sleeve', sample.yarns, 0]);
    const { underlay: _, ...drawn } = lighthouse;
    const [band, allOver] = patterns as [KnitBand, KnitAllOver];
    expect(band.groups.map(({ motif, across }) => [motif, across])).toEqual([
      [drawn, 2],
      [drawn, 2],
    ]);
    expect(allOver.motif).toBe(band.groups[0]?.motif);
  });

  it('has the numbers of the size that is asked for, and the copies', () => {
    const small = pieceAt(graded, 'small');
    expect([small.shape, small.hemRows]).toEqual([SMALL.shape, SMALL.hemRows]);
    expect(bandsOf(small)[0]?.groups.map(({ across }) => across)).toEqual([2, 1]);
    expect(pieceIn(projectAt(graded))).toBe(small);
  });

  it('has nothing of what only a project knows', () => {
    const piece = pieceAt(graded, 'small');
    expect(JSON.stringify(piece)).not.toMatch(/underlay|acrossInSizes|"but"|"motif":"/);
    for (const key of ['sizes', 'pieces', 'perSize', 'knit']) expect(Object.keys(piece)).not.toContain(key);
  });

  it('is not there where a motif is gone', () => {
    const gone = { ...sample, patterns: [...bandsOf(sample), startAllOver('gone', 60)] };
    expect(outcome(() => pieceIn(gone))).toMatchObject({
      problem: { code: 'motif-missing', facts: { motif: 'gone' } },
    });
  });
});

describe('the same piece', () => {
  const blank: Motif = { ...lighthouse, id: 'blank', grid: makeGrid(3, 3) };
  const underlay = { picture: '', left: 0, bottom: 0, columns: 1, rows: 1, opacity: 1, isShown: true, turn: 0 };

  it.each<[string, (project: Project) => Project]>([
    ['the project is called something else', (project) => ({ ...project, name: 'other' })],
    ['a motif comes that is not knitted', (project) => ({ ...project, motifs: [...project.motifs, blank] })],
    [
      'a picture lies behind the motif',
      (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, underlay })) }),
    ],
    ['nothing but the project is another', (project) => ({ ...project })],
    ['it is knitted twice', (project) => withPiece(project, { knit: 2 })],
    [
      'another piece comes',
      (project) => ({
        ...project,
        pieces: [...project.pieces, { ...(project.pieces[0] as PieceInSizes), id: 'front', offset: 3 }],
      }),
    ],
  ])('is there while %s, in every size', (_, change) => {
    const own = structuredClone(graded);
    for (const size of SIZES) expect(pieceAt(change(own), size)).toBe(pieceAt(own, size));
  });

  it.each<[string, (project: Project) => Project]>([
    ['the piece', (project) => withPiece(project, { offset: 1 })],
    [
      'a yarn',
      (project) => ({
        ...project,
        yarns: project.yarns.map((yarn) => ({ ...yarn, count: { system: 'tex', value: 5, plies: 1 }, onHand: null })),
      }),
    ],
    [
      'the bands',
      (project) =>
        withPiece(project, {
          patterns: project.pieces.flatMap(({ patterns }) => patterns.filter(({ kind }) => kind !== 'band')),
        }),
    ],
    [
      'the fills',
      (project) =>
        withPiece(project, {
          patterns: project.pieces.flatMap(({ patterns }) => patterns.filter(({ kind }) => kind === 'band')),
        }),
    ],
    [
      'the drawing of the motif',
      (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, grid: makeGrid(4, 4, 1) })) }),
    ],
    ['its name', (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, name: 'x' })) })],
    ['the ground', (project) => ({ ...project, mainYarn: 1 })],
  ])('is not there when %s is another, in any size', (_, change) => {
    for (const size of SIZES) {
      expect(pieceAt(change(graded), size)).not.toBe(pieceAt(graded, size));
      expect(pieceAt(change(graded), size)).toEqual(pieceAt(structuredClone(change(graded)), size));
    }
  });

  it('is another where its size is, and the same in the others', () => {
    const own = structuredClone(graded);
    const before = SIZES.map((size) => pieceAt(own, size));
    const longer = { ...SMALL.shape, rows: 90 };
    const at = projectAt(own, { size: 'size-1' });
    const changed = applyChange(own, changeSize(at, 0, { shape: longer }));
    expect(before[0]?.shape.rows).toBe(80);
    expect(pieceAt(changed, 'small').shape.rows).toBe(90);
    expect(pieceAt(changed, 'size-1')).toBe(before[1]);
  });

  it('is there however pieces and sizes are looked at in between', () => {
    const two = withPiece(graded, {});
    const front = { ...(two.pieces[0] as PieceInSizes), id: 'front', name: 'front' };
    const project: Project = { ...two, pieces: [...two.pieces, front] };
    const places = project.pieces.flatMap((piece) => SIZES.map((size) => ({ piece: piece.id, size })));
    const first = places.map((place) => pieceIn(projectAt(project, place)));
    expect(first.map(({ name }) => name)).toEqual(['sleeve', 'sleeve', 'front', 'front']);
    const renamed: Project = { ...project, name: 'other' };
    for (const place of [3, 0, 2, 1, 1, 3]) expect(pieceIn(projectAt(renamed, places[place]))).toBe(first[place]);
  });
});
