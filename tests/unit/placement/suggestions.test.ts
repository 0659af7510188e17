import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import {
  countsThatFit,
  isExact,
  nearestExactWidths,
  solvePlacement,
  type GroupOnNeedles,
  type PlacementQuestion,
} from '@shared/placement/index.ts';
import type { PlacementRule } from '@shared/pattern/index.ts';

function question(
  stitches: number,
  groups: readonly GroupOnNeedles[],
  rule: PlacementRule = { kind: 'seam' },
  seam = 0,
): PlacementQuestion {
  return {
    edges: { first: 0 as Slot, last: (stitches - 1) as Slot },
    groups,
    seamAllowance: { left: seam, right: seam },
    rule,
    judge: 'figure',
  };
}
const plain = (width: number): GroupOnNeedles => ({ width, blankLeft: 0, blankRight: 0 });

describe('how many copies fit', () => {
  it('says what spaces each count leaves', () => {
    // By hand, seam continues on 60 stitches with copies of 12: what is left is shared by one gap a copy.
    // 1: 48 over one gap across the seam, 24 and 24; 2: 36 over 2, so 18, edges 9; 3: 24 over 3, so 8, edges 4;
    // 4: 12 over 4, so 3, edges 1½; alike on both sides and in whole needles 1, 3, 4, 3, 1 and 2, 3, 2, 3, 2 are
    // as near (seam 2 against 4, seam 4 against 2), and wider margins lead; 5: nothing is left.
    const found = countsThatFit(question(60, [plain(12)]), plain(12), 10);
    expect(found.map(({ copies, choice, isExact }) => [copies, ...spaces(choice.figure), isExact])).toEqual([
      [1, 24, 24, true],
      [2, 9, 18, 9, true],
      [3, 4, 8, 8, 4, true],
      [4, 2, 3, 2, 3, 2, false],
      [5, 0, 0, 0, 0, 0, 0, true],
    ]);
  });

  it('leaves out counts that fixed margins have no room for', () => {
    // By hand, margins of 7 on 40 stitches with copies of 10: 26 are left, so two copies fit; one cannot, as
    // two margins of 7 and a copy are 24 and nothing else gives way.
    const found = countsThatFit(question(40, [plain(10)], { kind: 'margins', stitches: 7 }), plain(10), 10);
    expect(found.map(({ copies, choice }) => [copies, ...spaces(choice.figure)])).toEqual([[2, 7, 6, 7]]);
  });

  it('stops at the number asked for, and lets the seam continue where groups stand by hand', () => {
    const byHand = question(60, [plain(12)], { kind: 'by-hand', first: [3 as Slot] });
    const found = countsThatFit(byHand, plain(12), 2);
    expect(found.map(({ choice }) => choice.reason.rule)).toEqual(['seam', 'seam']);
  });
});

describe('the nearest stitch counts on which the rule comes out exactly', () => {
  it.each([
    // By hand: two groups of 35 seen leave 120 − 70 = 50, shared 12½, 25, 12½. With 4 parts to share, the two
    // margins and the gap of two parts, it comes out where what is left divides by 4: on 118 (48) and 122 (52).
    { on: 120, groups: [35, 35], rule: { kind: 'seam' }, seam: 0, expected: [118, 122] },
    // Even spaces of one group of 11 are two alike, so an even rest: 40 leaves 29; 39 and 41 leave 28 and 30.
    { on: 40, groups: [11], rule: { kind: 'even' }, seam: 0, expected: [39, 41] },
    // Three groups of 10 and a stitch of seam at each edge on 64: 64 − 2 − 30 = 32 over 4 spaces: exactly.
    { on: 64, groups: [10, 10, 10], rule: { kind: 'even' }, seam: 1, expected: [] },
    // The same on 65: back to 64, on to 68.
    { on: 65, groups: [10, 10, 10], rule: { kind: 'even' }, seam: 1, expected: [64, 68] },
    // Margins of 5 and three groups of 6 on 33: 33 − 10 − 18 = 5 over two gaps; 32 leaves 4, 34 leaves 6.
    { on: 33, groups: [6, 6, 6], rule: { kind: 'margins', stitches: 5 }, seam: 0, expected: [32, 34] },
  ] as const)('from $on stitches with groups of $groups and rule $rule.kind are $expected', (row) => {
    const asked = question(row.on, row.groups.map(plain), row.rule, row.seam);
    expect(nearestExactWidths(asked, 20, () => true).map(({ stitches }) => stitches)).toEqual(row.expected);
  });

  it('are never wider than the bed, and nothing by hand', () => {
    expect(
      nearestExactWidths(question(120, [plain(35), plain(35)]), 20, (width) => width <= 121).map(
        ({ stitches }) => stitches,
      ),
    ).toEqual([118]);
    const byHand = question(40, [plain(11)], { kind: 'by-hand', first: [0 as Slot] });
    expect(nearestExactWidths(byHand, 20, () => true)).toEqual([]);
  });

  it('are exact, and no nearer piece is', () => {
    const widths = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(widths, fc.integer({ min: 0, max: 30 }), fc.constantFrom('seam', 'even'), (groups, more, kind) => {
        const stitches = groups.reduce((sum, width) => sum + width, 0) + more;
        const asked = question(stitches, groups.map(plain), { kind });
        const exactOn = (width: number): boolean => {
          const sized = { ...asked, edges: { first: 0 as Slot, last: (width - 1) as Slot } };
          const [best] = solvePlacement(sized, 1);
          return best !== undefined && isExact(best);
        };
        for (const { stitches: width } of nearestExactWidths(asked, 10, () => true)) {
          expect(exactOn(width)).toBe(true);
          const step = Math.sign(stitches - width);
          for (let between = width + step; between !== stitches; between += step) expect(exactOn(between)).toBe(false);
        }
      }),
    );
  });
});

function spaces({ margins, gaps }: { margins: readonly [number, number]; gaps: readonly number[] }): number[] {
  return [margins[0], ...gaps, margins[1]];
}
