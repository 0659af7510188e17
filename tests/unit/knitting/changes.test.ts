/** What a changed design means for a piece on the needles, worked by hand. */
import { describe, expect, it } from 'vitest';
import { orderChange, type KnittingOrder } from '@shared/knitting/index.ts';
import { knittingOf, putBackLine, trial } from './knitting.ts';

const begun = knittingOf(trial());
const change = (now: KnittingOrder, reading: number) => orderChange(begun, now, reading);

describe('a design that changed', () => {
  it('is the same where nothing of the order did', () => {
    expect(change(knittingOf(trial()), 6)).toEqual({
      isSame: true,
      knitted: [],
      aheadFrom: null,
      rows: { begun: 12, now: 12 },
      toSet: [],
    });
  });

  it('says which rows that are knitted would be others, and in what', () => {
    const drawn = knittingOf(trial({ motif: ['XXX', 'X.X'] }));
    const { knitted, aheadFrom, isSame } = change(drawn, 9);
    expect(isSame).toBe(false);
    expect(knitted).toEqual([{ first: 5, last: 6, differ: ['yarns', 'acts'] }]);
    expect(aheadFrom).toBeNull();
  });

  it('says from which row on the rest is another', () => {
    const drawn = knittingOf(trial({ motif: ['XX.', 'XXX'] }));
    expect(change(drawn, 5)).toMatchObject({ knitted: [], aheadFrom: 6 });
    expect(change(drawn, 4)).toMatchObject({ knitted: [], aheadFrom: 6 });
  });

  it('sees other stitches, and the rows that a piece has no more', () => {
    const wider = knittingOf(trial({ stitches: 13 }));
    expect(change(wider, 2).knitted).toEqual([
      { first: 1, last: 1, differ: ['stitches', 'acts'] },
      { first: 2, last: 2, differ: ['stitches'] },
    ]);
    const shorter = knittingOf(trial({ rows: 9 }));
    const { knitted, rows, toSet } = change(shorter, 11);
    expect(rows).toEqual({ begun: 12, now: 9 });
    // Before its last row the tension is set for casting off.
    expect(knitted).toEqual([
      { first: 9, last: 9, differ: ['acts'] },
      { first: 10, last: 10, differ: ['gone', 'acts'] },
      { first: 11, last: 11, differ: ['gone'] },
    ]);
    expect(toSet).toBeNull();
  });

  it('goes on where a longer piece has rows that there were not', () => {
    expect(change(knittingOf(trial({ rows: 20 })), 4)).toMatchObject({ knitted: [], aheadFrom: 12 });
  });

  it('sees that the carriage would stand at the other side', () => {
    const { knitted } = change(knittingOf(trial({ piece: { startSide: 'left' } })), 3);
    expect(knitted[0]).toEqual({ first: 1, last: 3, differ: ['carriage'] });
  });

  it('knows yarns by their names, wherever they stand in the palette', () => {
    const [slate, chalk, kelp] = trial().yarns;
    const moved = trial({ motif: ['.O.', 'OOO'], yarns: [slate, kelp, chalk] as never });
    expect(change(knittingOf(moved), 9).isSame).toBe(true);
    const others = trial({ yarns: [slate, kelp, chalk] as never });
    expect(change(knittingOf(others), 9).knitted).toEqual([
      { first: 5, last: 5, differ: ['yarns', 'acts'] },
      { first: 6, last: 6, differ: ['yarns'] },
      { first: 7, last: 7, differ: ['acts'] },
    ]);
  });

  it('takes a yarn that has another name for the same one', () => {
    const [slate, chalk, kelp] = trial().yarns;
    const renamed = trial({ yarns: [slate, { ...(chalk as object), name: 'foam' }, kelp] as never });
    expect(change(knittingOf(renamed), 9).isSame).toBe(true);
  });

  it('says what is set otherwise at the machine to take it over', () => {
    // The figure begins two rows lower: where the counter reads 4 its second row is due.
    const lower = knittingOf(trial({ band: { position: { kind: 'from-row', row: 4 } } }));
    const { toSet } = change(lower, 4);
    expect(toSet?.map((put) => putBackLine(put, lower))).toEqual([
      'carriage pattern',
      'into 2: chalk',
      'strand 1 at L2',
      'row 5: 1 by-hand, R1',
    ]);
  });
});
