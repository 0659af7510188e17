/** Lengths that are kept as lengths. Worked by hand: 45 cm at 28 stitches in 10 cm are 126 stitches, at 30 they are 135. */
import { describe, expect, it } from 'vitest';
import { heldLength, evenScale, keptAway, seamTaking, withLength, type Piece } from '@shared/piece/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import {
  projectAt,
  addSection,
  addSize,
  afterChange,
  changeOf,
  changePiece,
  changeSectionRows,
  changeSize,
  projectFromText,
  reshapeSizes,
  sampleProject,
  setPattern,
  setPiece,
  sizesOf,
  START_PIECE,
  type ProjectAt,
} from '@shared/project/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';
import { fileTextOf, settled } from '../../written-projects.ts';

/** 28 stitches and 40 rows in 10 cm. */
const PLAIN: ProjectAt = settled(projectAt(sampleProject()), { piece: START_PIECE });

const change = (project: ProjectAt, to: Partial<Piece>): ProjectAt =>
  expectChangeLaws(project, changePiece(project, 'piece-size', to));

describe('a width given in centimetres', () => {
  const wide = change(PLAIN, { lengths: { stitches: 450 } });

  it('gives the stitches that come nearest to it, and is kept in the file beside them', () => {
    expect(wide.piece.shape.stitches).toBe(126);
    expect(projectAt(projectFromText(fileTextOf(wide))).piece.lengths).toEqual({ stitches: 450 });
  });

  it('keeps to the length when the gauge is typed after it', () => {
    expect(change(wide, { gauge: { stitches: 30, rows: 40 } }).piece.shape).toMatchObject({ stitches: 135, rows: 100 });
  });

  it('is forgotten when stitches are typed, which then stay', () => {
    const counted = change(wide, {
      shape: { ...wide.piece.shape, stitches: 130 },
      lengths: withLength(wide.piece.lengths, 'stitches', null),
    });
    expect(counted.piece.lengths).toBeUndefined();
    expect(change(counted, { gauge: { stitches: 30, rows: 40 } }).piece.shape.stitches).toBe(130);
  });

  it('ends where something else gives the piece other stitches', () => {
    const { shape } = wide.piece;
    const other = afterChange(wide, changeOf('match-seam', ...setPiece(wide, { shape: { ...shape, stitches: 128 } })));
    expect(
      heldLength(other.piece.lengths?.stitches, 128, {
        scale: evenScale(START_PIECE.gauge, 'stitches'),
        least: 1,
        most: 999,
      }),
    ).toBeNull();
    const after = change(other, { gauge: { stitches: 30, rows: 40 } });
    expect([after.piece.shape.stitches, after.piece.lengths]).toEqual([128, undefined]);
  });

  it('is kept by size', () => {
    const rectangle = (stitches: number) => ({ shape: { kind: 'rectangle', stitches, rows: 90 } }) as const;
    const sized = [
      (project: ProjectAt) => addSize(project, 1, 'L', 'large'),
      (project: ProjectAt) => changeSize(project, 1, rectangle(140)),
      (project: ProjectAt) => addSize(project, 0, 'S', 'small'),
      (project: ProjectAt) => changeSize(project, 0, { ...rectangle(112), lengths: { stitches: 400 } }),
    ].reduce((project, step) => afterChange(project, step(project)), wide);
    const after = change(sized, { gauge: { stitches: 30, rows: 40 } });
    // 40 cm at 30 stitches are 120; the largest was given in stitches.
    expect(sizesOf(after).map(({ shape }) => shape.stitches)).toEqual([120, 135, 140]);
    const counted = afterChange(after, changeSize(after, 0, rectangle(118)));
    expect(sizesOf(counted)[0]).toEqual({ id: 'small', name: 'S', hemRows: 0, sectionRows: [], ...rectangle(118) });
  });

  it('stays with the counts that another kind of shape has too', () => {
    const long = change(wide, { lengths: { stitches: 450, rows: 300 } });
    const tapered = afterChange(long, reshapeSizes(long, 'tapered'));
    expect(tapered.piece.lengths).toEqual({ stitches: 450, rows: 300 });
    const shaped = change(tapered, { lengths: { ...tapered.piece.lengths, stitchesAtTop: 500, straightRows: 20 } });
    expect(shaped.piece.shape).toMatchObject({ stitchesAtTop: 140, straightRows: 8 });
    expect(afterChange(shaped, reshapeSizes(shaped, 'rectangle')).piece.lengths).toEqual({ stitches: 450, rows: 300 });
  });
});

describe('a length up the piece', () => {
  const hemmed = change(PLAIN, { lengths: { hemRows: 50, rows: 300 } });

  it('of a hem and of a section follows the gauges that these have, and the piece is as long as it was said', () => {
    expect([hemmed.piece.hemRows, hemmed.piece.shape.rows]).toEqual([20, 120]);
    const ribbed = afterChange(hemmed, addSection(hemmed, () => 'rib').change);
    const given = expectChangeLaws(ribbed, changeSectionRows(ribbed, 0, 24, 60));
    expect(given.piece.sections).toEqual([expect.objectContaining({ name: 'rib', rows: 24, lengthMm: 60 })]);
    // At 30 rows in 10 cm 50 mm are 15 rows; 60 mm of rib are 24 and 190 mm above them 76.
    const loose = change(given, { hem: { ...given.piece.hem, gauge: { stitches: 28, rows: 30 } } });
    expect([loose.piece.hemRows, loose.piece.sections[0]?.rows, loose.piece.shape.rows]).toEqual([15, 24, 115]);
    const parts = loose.piece.sections.map((part) => ({ ...part, gauge: { stitches: 28, rows: 50 } }));
    const tight = change(loose, { sections: parts });
    expect([tight.piece.hemRows, tight.piece.sections[0]?.rows, tight.piece.shape.rows]).toEqual([15, 30, 121]);
  });

  it('of a section is forgotten when rows are typed', () => {
    const ribbed = afterChange(hemmed, addSection(hemmed, () => 'rib').change);
    const counted = afterChange(
      ribbed,
      changeSectionRows(afterChange(ribbed, changeSectionRows(ribbed, 0, 24, 60)), 0, 30, null),
    );
    expect(change(counted, { gauge: { stitches: 28, rows: 50 } }).piece.sections).toEqual([
      { name: 'rib', rows: 30, isLined: false, gauge: null, tension: '' },
    ]);
  });

  it('between a band and an edge follows too', () => {
    const position = keptAway({ kind: 'from-edge', edge: 'lower', section: 'piece', rows: 0 }, 40, 100);
    const placed = afterChange(PLAIN, changeOf('first-row', setPattern(PLAIN, 'band', 0, { position })));
    const after = change(placed, { gauge: { stitches: 28, rows: 50 } });
    expect(bandsOf(after)[0]?.position).toEqual({ ...position, rows: 50 });
    const counted = keptAway(position, 40, null);
    expect(counted).toEqual({ kind: 'from-edge', edge: 'lower', section: 'piece', rows: 40 });
  });
});

describe('a seam allowance given in centimetres', () => {
  it('follows the gauge, and is forgotten when stitches are typed', () => {
    const seamed = change(PLAIN, { seamAllowance: seamTaking(START_PIECE.seamAllowance, 'left', 3, 10) });
    const tight = change(seamed, { gauge: { stitches: 40, rows: 40 } });
    expect(tight.piece.seamAllowance).toEqual({ left: 4, right: 0, leftMm: 10 });
    expect(seamTaking(tight.piece.seamAllowance, 'left', 2, null)).toEqual({ left: 2, right: 0 });
  });
});
