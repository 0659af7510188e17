/** Sections that come, go and change places, and the bands that stand in them. */
import { describe, expect, it } from 'vitest';
import { makePlan } from '@shared/plan/index.ts';
import { allOversOf, bandsOf, type Band } from '@shared/pattern/index.ts';
import {
  addSection,
  afterChange,
  changeSection,
  moveSection,
  pieceIn,
  removeSection,
  renameSection,
  startAllOver,
  type ProjectAt,
} from '@shared/project/index.ts';
import { onRows, settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';

/** 60 rows: a hem of 10, then "rib" and "band", and a motif of 2 rows in the middle of "band". */
function sectioned(): ProjectAt {
  const plain = projectWith({ motif: ['X.', '.X'], copies: [1], stitches: 20, rows: 60, piece: { hemRows: 10 } });
  const parts = [
    { name: 'rib', rows: 8, isLined: false, gauge: null, tension: '' },
    { name: 'band', rows: 12, isLined: true, gauge: { stitches: 26, rows: 30 }, tension: '' },
  ];
  const [band] = bandsOf(plain) as [Band];
  const position = { kind: 'centred', section: { named: 'band' }, oddRow: 'below' } as const;
  return settled(plain, { piece: { ...plain.piece, sections: parts }, patterns: [{ ...band, position }] });
}

const firstRow = (project: ProjectAt): number | undefined => bandsOf(makePlan(pieceIn(project)))[0]?.firstRow;
const allOverRows = (project: ProjectAt): object | undefined => {
  const [placed] = allOversOf(makePlan(pieceIn(project)));
  return placed && { first: placed.firstRow, last: placed.lastRow };
};
const names = ({ piece }: ProjectAt): string[] => piece.sections.map(({ name }) => name);

describe('sections above the hem', () => {
  it('begin where the hem ends, the body above them', () => {
    // Hem 1–10, rib 11–18, band 19–30: 12 − 2 = 10 rows are left, 5 below the motif.
    expect(makePlan(pieceIn(sectioned())).sections.map(({ first, last }) => [first, last])).toEqual([
      [1, 5],
      [6, 10],
      [11, 18],
      [19, 30],
      [31, 60],
    ]);
    expect(firstRow(sectioned())).toBe(24);
  });

  it('take with them what stands in them when they change places, rows or name', () => {
    const moved = afterChange(sectioned(), moveSection(sectioned(), 1, -1));
    expect(names(moved)).toEqual(['band', 'rib']);
    // Band 11–22.
    expect(firstRow(moved)).toBe(16);
    expect(firstRow(afterChange(sectioned(), changeSection(sectioned(), 'section-rows', 0, { rows: 3 })))).toBe(19);
    const renamed = afterChange(sectioned(), renameSection(sectioned(), 1, 'gulls'));
    expect(names(renamed)).toEqual(['rib', 'gulls']);
    expect(firstRow(renamed)).toBe(24);
  });

  it('leave what stood in them on its rows when they are taken away', () => {
    const removed = afterChange(sectioned(), removeSection(sectioned(), 1, [{ first: 24, last: 25 }]));
    expect(names(removed)).toEqual(['rib']);
    expect(bandsOf(removed)[0]?.position).toEqual({ kind: 'from-row', row: 24 });
    expect(firstRow(removed)).toBe(24);
  });

  it('leave the rows of an all-over that were said by them where they lay', () => {
    const rib = { named: 'rib' };
    const from = { kind: 'from-edge', edge: 'lower', section: rib, rows: 2 } as const;
    const to = { kind: 'from-edge', edge: 'upper', section: { named: 'band' }, rows: 1 } as const;
    const project = settled(sectioned(), {
      patterns: [{ ...startAllOver('motif', 1), position: { kind: 'from-to', from, to } }],
    });
    // Rib 11–18 and band 19–30: from its third row to the last but one of the band.
    const rows = { first: 13, last: 29 };
    expect(allOverRows(project)).toEqual(rows);
    const without = afterChange(project, removeSection(project, 0, [rows]));
    expect(allOversOf(without)[0]?.position).toEqual({ kind: 'from-to', from: { kind: 'from-row', row: 13 }, to });
    const neither = afterChange(without, removeSection(without, 0, [rows]));
    expect(allOversOf(neither)[0]?.position).toEqual(onRows(13, 29));
    expect(allOverRows(neither)).toEqual(rows);
    const renamed = afterChange(project, renameSection(project, 1, 'gulls'));
    expect(allOversOf(renamed)[0]?.position).toEqual({
      kind: 'from-to',
      from,
      to: { ...to, section: { named: 'gulls' } },
    });
    const high = settled(project, {
      patterns: [{ ...startAllOver('motif', 1), position: { kind: 'so-high', height: 4, at: from } }],
    });
    expect(allOversOf(afterChange(high, removeSection(high, 0, [{ first: 13, last: 16 }])))[0]?.position).toEqual({
      kind: 'so-high',
      height: 4,
      at: { kind: 'from-row', row: 13 },
    });
  });

  it('are added above the others under a name of their own, with as many rows as are left', () => {
    const called = (number: number): string => (number === 3 ? 'rib' : `section ${number}`);
    const one = afterChange(sectioned(), addSection(sectioned(), called).change);
    expect(one.piece.sections[2]).toEqual({ name: 'section 4', rows: 20, isLined: false, gauge: null, tension: '' });
    // 60 − 10 − 8 − 12 − 20 = 10 rows.
    expect(addSection(one, called).added).toMatchObject({ name: 'section 5', rows: 10 });
  });
});
