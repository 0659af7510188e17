/** Sizes proposed from two others. Worked by hand; START_PIECE has 28 stitches and 40 rows in 10 cm. */
import { describe, expect, it } from 'vitest';
import { graded, isShapedByBoth, type Grade, type Piece, type Section, type Shape } from '@shared/piece/index.ts';
import { START_PIECE } from '@shared/project/index.ts';

const rectangle = (stitches: number, rows = 100): Shape => ({ kind: 'rectangle', stitches, rows });
const piece = (to: Partial<Piece>): Piece => ({ ...START_PIECE, ...to });
const shapeAt = (one: Shape, other: Shape, at: Grade): Shape =>
  graded(piece({ shape: one }), piece({ shape: other }), at).shape;
const section = (name: string, rows: number, to: Partial<Section> = {}): Section => ({
  name,
  rows,
  isLined: false,
  gauge: null,
  tension: '',
  ...to,
});

describe('a size proposed from two', () => {
  it.each<[Grade, number, number]>([
    ['below', 88, 90],
    ['between', 100, 105],
    ['above', 112, 120],
  ])('%s them goes on in a line', (at, stitches, rows) => {
    expect(shapeAt(rectangle(96, 100), rectangle(104, 110), at)).toEqual(rectangle(stitches, rows));
  });

  it('has whole stitches, half of one going up', () => {
    expect(shapeAt(rectangle(96), rectangle(103), 'between').stitches).toBe(100);
    expect(shapeAt(rectangle(103), rectangle(96), 'between').stitches).toBe(100);
  });

  it('is a copy of two that are one', () => {
    const one = piece({
      shape: rectangle(96),
      hemRows: 20,
      lengths: { stitches: 343 },
      sections: [section('rib', 12)],
    });
    for (const at of ['below', 'between', 'above'] as const) expect(graded(one, one, at)).toEqual(one);
  });

  it('stays within what a piece can have', () => {
    expect(shapeAt(rectangle(3, 2), rectangle(60, 40), 'below')).toEqual(rectangle(1, 1));
    expect(shapeAt(rectangle(10, 2100), rectangle(400, 4000), 'above')).toMatchObject({ rows: 4000 });
  });

  it('has a sleeve that is wider and longer all the way up', () => {
    const sleeve = (stitches: number, stitchesAtTop: number, rows: number, straightRows: number): Shape => ({
      kind: 'tapered',
      stitches,
      stitchesAtTop,
      rows,
      straightRows,
    });
    const [small, large] = [sleeve(60, 100, 140, 20), sleeve(66, 112, 151, 24)] as const;
    // Shaped up to row 120 in the one and 127 in the other: 123.5 is 124, and 145.5 is 146 rows in all.
    expect(shapeAt(small, large, 'between')).toEqual(sleeve(63, 106, 146, 22));
    expect(shapeAt(small, large, 'above')).toEqual(sleeve(72, 124, 162, 28));
  });

  it('keeps waist and chest within its rows', () => {
    const body = (rowsToWaist: number, rowsToChest: number, rows: number): Shape => ({
      kind: 'body',
      stitches: 90,
      stitchesAtWaist: 80,
      stitchesAtChest: 100,
      rowsToWaist,
      rowsToChest,
      rows,
    });
    // Each for itself would be 11 and 11 of 21 rows.
    expect(shapeAt(body(10, 10, 20), body(11, 11, 22), 'between')).toEqual(body(11, 10, 21));
    // 40 and 30 rows less by 25 each leave 15 and 5, which take at least 20.
    expect(shapeAt(body(15, 5, 30), body(40, 30, 80), 'below')).toEqual(body(0, 0, 1));
    expect(shapeAt(body(40, 30, 80), body(15, 5, 30), 'above')).toEqual(body(0, 0, 1));
    expect(shapeAt(body(30, 30, 60), body(35, 40, 70), 'above')).toEqual(body(40, 50, 90));
  });

  it('keeps hem and sections within its rows', () => {
    const of = (hemRows: number, rib: number, rows: number): Piece =>
      piece({ shape: rectangle(90, rows), hemRows, sections: [section('rib', rib)] });
    expect(graded(of(5, 5, 10), of(6, 6, 12), 'between')).toEqual(of(6, 5, 11));
    // A hem of 30 and a rib of 14 take 44 rows, where the last difference alone would leave 40.
    expect(graded(of(20, 10, 60), of(25, 12, 50), 'above')).toEqual(of(30, 14, 44));
  });

  it('is shaped row by row as both are, step by step', () => {
    const steps = (stitches: number, rows: number, ...at: (readonly [number, number])[]): Shape => ({
      kind: 'steps',
      stitches,
      rows,
      steps: at.map(([row, by]) => ({ row, left: by, right: by })),
    });
    const [small, large] = [steps(90, 100, [60, -4], [62, -1]), steps(98, 106, [64, -6], [67, -1])] as const;
    // 62 and 64.5, which is 65; 5 stitches off, then 1.
    expect(shapeAt(small, large, 'between')).toEqual(steps(94, 103, [62, -5], [65, -1]));
    expect(shapeAt(small, large, 'above')).toEqual(steps(106, 112, [68, -8], [72, -1]));
    // Unlike steps: the shape of the nearer size.
    const longer = steps(98, 106, [64, -6], [67, -1], [69, -1]);
    expect([shapeAt(small, longer, 'between'), shapeAt(small, longer, 'above')]).toEqual([small, longer]);
    expect([isShapedByBoth(small, large, 'above'), isShapedByBoth(small, longer, 'above')]).toEqual([true, false]);
    // Steps that would change places.
    const close = steps(98, 106, [60, -4], [61, -1]);
    expect(shapeAt(steps(90, 100, [60, -4], [70, -1]), close, 'above')).toEqual(close);
  });

  it('of two kinds has the shape of the nearer, with the lengths that it was given', () => {
    const small = piece({ shape: rectangle(96), lengths: { stitches: 343, hemRows: 50 }, hemRows: 20 });
    const large = piece({
      shape: { kind: 'tapered', stitches: 104, stitchesAtTop: 120, rows: 110, straightRows: 4 },
      lengths: { stitches: 371, hemRows: 60 },
      hemRows: 24,
    });
    const [between, above] = [graded(small, large, 'between'), graded(small, large, 'above')];
    expect(between).toMatchObject({ shape: small.shape, hemRows: 22, lengths: { stitches: 343, hemRows: 55 } });
    expect(above).toMatchObject({ shape: large.shape, hemRows: 28, lengths: { stitches: 371, hemRows: 70 } });
  });
});

describe('a size proposed from lengths', () => {
  /**
   * Half of the chest girth in cm that the letters S, M, L and XL stand for,
   * the middle of 86–94, 94–102, 102–110 and 110–118 (EN 13402-3, men; from
   * memory), and the stitches that come nearest to it at 28 in 10 cm.
   */
  const FRONTS = [
    { cm: 45, stitches: 126 },
    { cm: 49, stitches: 137 },
    { cm: 53, stitches: 148 },
    { cm: 57, stitches: 160 },
  ] as const;
  const front = (at: 0 | 1 | 2 | 3): Piece =>
    piece({ shape: rectangle(FRONTS[at].stitches), lengths: { stitches: FRONTS[at].cm * 10 } });

  it('is the size of the published scale, in lengths and in the stitches nearest to them', () => {
    expect(graded(front(0), front(2), 'between')).toEqual(front(1));
    expect(graded(front(1), front(2), 'above')).toEqual(front(3));
    expect(graded(front(1), front(2), 'below')).toEqual(front(0));
  });

  it('goes by stitches where one of the two was given in stitches', () => {
    const { lengths: _, ...counted } = front(2);
    expect(graded(front(1), counted, 'above')).toEqual({ ...counted, shape: rectangle(159) });
  });

  it('does not take up a length that its count is not the nearest to', () => {
    const other = { ...front(0), shape: rectangle(130) };
    const { lengths: _, ...counted } = other;
    expect(graded(other, front(2), 'between')).toEqual({ ...counted, shape: rectangle(139) });
  });

  it('has no length below nothing', () => {
    const hem = (mm: number): Piece => piece({ hemRows: (mm * 4) / 10, lengths: { hemRows: mm } });
    const { lengths: _, ...none } = hem(0);
    expect(graded(hem(20), hem(50), 'below')).toEqual(none);
  });

  it('counts rows of hem and sections at their own gauge', () => {
    const rib = { stitches: 26, rows: 50 };
    const of = (hemMm: number, hemRows: number, ribMm: number, rows: number): Piece =>
      piece({
        shape: rectangle(90, 300),
        hem: { turning: 'none', gauge: { stitches: 28, rows: 30 } },
        hemRows,
        lengths: { hemRows: hemMm },
        sections: [section('rib', rows, { gauge: rib, lengthMm: ribMm })],
      });
    // 45 mm of hem at 30 rows in 10 cm are 13.5 rows, so 14; 55 mm of rib at 50 are 27.5, so 28.
    expect(graded(of(40, 12, 50, 25), of(50, 15, 60, 30), 'between')).toEqual(of(45, 14, 55, 28));
  });
});
