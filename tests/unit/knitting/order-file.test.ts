import { describe, expect, it } from 'vitest';
import { digestOf, orderFromText, orderToText } from '@shared/knitting/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { knittingOf, sample, trial } from './knitting.ts';

const text = orderToText(knittingOf(trial()));

describe('an order as text', () => {
  it('is the same order again', () => {
    for (const knitting of [knittingOf(trial()), knittingOf(sample())]) {
      const written = orderToText(knitting);
      expect(orderFromText(written)).toEqual(knitting);
      expect(orderToText(orderFromText(written))).toBe(written);
      expect(written).not.toContain('\n');
    }
  });

  it('says rows that are alike once', () => {
    const { contrast } = JSON.parse(orderToText(knittingOf(trial({ rows: 400 })))) as Raw;
    expect(contrast.rows).toHaveLength(400);
    expect(contrast.kinds).toEqual([[], [[-1, 1, 1]], [[0, 0, 1]]]);
  });

  it('is told apart by its digest', () => {
    expect(digestOf(text)).toMatch(/^\d+-[0-9a-f]{8}$/);
    expect(digestOf(text)).toBe(digestOf(orderToText(knittingOf(trial()))));
    expect(digestOf(text.replace('slate', 'sl\u0101te'))).not.toBe(digestOf(text));
  });

  const other = (change: (raw: Raw) => void): string => {
    const raw = JSON.parse(text) as Raw;
    change(raw);
    return JSON.stringify(raw);
  };
  interface Raw {
    order: { counter?: number; row?: number | null; carriageAt: string; first?: number; acts?: { kind: string }[] }[];
    contrast: { rows: number[]; kinds: number[][][] };
    mainYarn: number;
  }

  it.each<[string, string]>([
    ['no JSON', text.slice(0, -1)],
    ['another thing', '[]'],
    ['a field more', other((raw) => Object.assign(raw, { more: 1 }))],
    ['an act that nobody knows', other(({ order }) => order[0]?.acts?.push({ kind: 'sing' }))],
    ['a reading left out', other(({ order }) => order.splice(2, 1))],
    [
      'a carriage that does not go across',
      other(({ order }) => Object.assign(order[2] as object, { carriageAt: 'right' })),
    ],
    ['no end', other(({ order }) => order.pop())],
    ['a row too many', other(({ contrast }) => contrast.rows.push(0))],
    ['a row of no kind', other(({ contrast }) => contrast.rows.splice(0, 1, 99))],
    ['a yarn that is none', other(({ contrast }) => Object.assign(contrast.kinds[1]?.[0] as object, { 2: 77 }))],
    ['a main yarn that is none', other((raw) => (raw.mainYarn = 9))],
    ['a needle that is zero below zero', text.replace('[[0,0,1]]', '[[-0,0,1]]')],
    ['a needle that is no number', text.replace('"first":-5', '"first":"L5"')],
  ])('with %s is refused', (_, spoiled) => {
    expect(spoiled).not.toBe(text);
    expect(outcome(() => orderFromText(spoiled))).toMatchObject({ problem: { code: 'order-unreadable' } });
  });
});
