/** A piece with all that it is knitted of, as planners are given it. */
import { describe, expect, it } from 'vitest';
import { makeGrid } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import type { Size } from '@shared/piece/index.ts';
import { pieceIn, sampleProject, startFill, type Project } from '@shared/project/index.ts';

const sample = sampleProject();
const [lighthouse] = sample.motifs as [Motif];
const SMALL: Size = { name: 'S', shape: { kind: 'rectangle', stitches: 60, rows: 80 }, hemRows: 4 };

/** The sample with a smaller size, in which its second group has one copy. */
const graded: Project = {
  ...sample,
  sizes: { ...sample.sizes, smaller: [SMALL] },
  bands: sample.bands.map((band) => ({
    ...band,
    groups: band.groups.map((group, g) => (g === 1 ? { ...group, acrossInSizes: [{ size: 'S', across: 1 }] } : group)),
  })),
  fills: [startFill(lighthouse.id, 60)],
};

describe('a piece to be knitted', () => {
  it('has its motifs, its yarns and its ground in it', () => {
    const { name, bands, fills, yarns, mainYarn } = pieceIn(graded);
    expect([name, yarns, mainYarn]).toEqual(['sleeve', sample.yarns, 0]);
    const { underlay: _, ...drawn } = lighthouse;
    expect(bands[0]?.groups.map(({ motif, across }) => [motif, across])).toEqual([
      [drawn, 2],
      [drawn, 2],
    ]);
    expect(fills[0]?.motif).toBe(bands[0]?.groups[0]?.motif);
  });

  it('has the numbers of the size that is asked for, and the copies', () => {
    const small = pieceIn(graded, 0);
    expect([small.shape, small.hemRows]).toEqual([SMALL.shape, SMALL.hemRows]);
    expect(small.bands[0]?.groups.map(({ across }) => across)).toEqual([2, 1]);
    expect(pieceIn(graded, 1)).toBe(pieceIn(graded));
  });

  it('has nothing of what only a project knows', () => {
    const piece = pieceIn(graded);
    expect(JSON.stringify(piece)).not.toMatch(/underlay|acrossInSizes|chosenInSizes|"motif":"/);
    expect(Object.keys(piece)).not.toContain('sizes');
  });

  it('is not there where a motif is gone', () => {
    const gone: Project = { ...graded, fills: [startFill('gone', 60)] };
    expect(outcome(() => pieceIn(gone))).toMatchObject({
      problem: { code: 'motif-missing', facts: { motif: 'gone' } },
    });
  });
});

describe('the same piece', () => {
  const blank: Motif = { ...lighthouse, id: 'blank', grid: makeGrid(3, 3) };
  const underlay = { picture: '', left: 0, bottom: 0, columns: 1, rows: 1, opacity: 1, isShown: true };

  it.each<[string, (project: Project) => Project]>([
    ['the project is called something else', (project) => ({ ...project, name: 'other' })],
    ['a motif comes that is not knitted', (project) => ({ ...project, motifs: [...project.motifs, blank] })],
    [
      'a picture lies behind the motif',
      (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, underlay })) }),
    ],
    ['nothing but the project is another', (project) => ({ ...project })],
  ])('is there while %s, in every size', (_, change) => {
    const own = structuredClone(graded);
    for (const size of [0, 1]) expect(pieceIn(change(own), size)).toBe(pieceIn(own, size));
  });

  it.each<[string, (project: Project) => Project]>([
    ['the piece', (project) => ({ ...project, piece: { ...project.piece, offset: 1 } })],
    ['a yarn', (project) => ({ ...project, yarns: project.yarns.map((yarn) => ({ ...yarn, tex: 5 })) })],
    ['the bands', (project) => ({ ...project, bands: [] })],
    ['the fills', (project) => ({ ...project, fills: [] })],
    [
      'the drawing of the motif',
      (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, grid: makeGrid(4, 4, 1) })) }),
    ],
    ['its name', (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, name: 'x' })) })],
    ['the ground', (project) => ({ ...project, motifs: project.motifs.map((motif) => ({ ...motif, ground: 1 })) })],
  ])('is not there when %s is another, in any size', (_, change) => {
    for (const size of [0, 1]) {
      expect(pieceIn(change(graded), size)).not.toBe(pieceIn(graded, size));
      expect(pieceIn(change(graded), size)).toEqual(pieceIn(structuredClone(change(graded)), size));
    }
  });

  it('is another when a size other than the current one is, and the current one is the same', () => {
    const longer = { ...SMALL, shape: { ...SMALL.shape, rows: 90 } };
    const own = structuredClone(graded);
    const changed: Project = { ...own, sizes: { ...own.sizes, smaller: [longer] } };
    expect(pieceIn(own, 0).shape.rows).toBe(80);
    expect(pieceIn(changed, 0).shape.rows).toBe(90);
    expect(pieceIn(changed)).toBe(pieceIn(own));
  });
});
