/** Counts of labels as tex, what is on hand, and bounds of both. */
import { describe, expect, it } from 'vitest';
import { COUNT_BOUNDS, MOST_TEX, type YarnCount } from '@shared/project/index.ts';
import { ballGramsOf, countIn, gramsOnHand, mmOf, gramsOf, texOf, texOfCount } from '@shared/yarn/index.ts';

describe('the count of a label', () => {
  // Definitions of the systems, with the factors of ISO 1144 (1000, 590.5, 885.8, 9), from memory; figures computed.
  it.each<[string, YarnCount, number]>([
    ['tex 50 x 2', { system: 'tex', value: 50, plies: 2 }, 100],
    ['Nm 2/30', { system: 'metric', value: 30, plies: 2 }, 66.67],
    ['Ne 30', { system: 'cotton', value: 30, plies: 1 }, 19.68],
    ['Ne 2/8', { system: 'cotton', value: 8, plies: 2 }, 147.63],
    ['worsted 2/24', { system: 'worsted', value: 24, plies: 2 }, 73.82],
    ['150 denier x 3', { system: 'denier', value: 150, plies: 3 }, 50],
    ['50 g in 175 m', { system: 'ball', metres: 175, grams: 50 }, 285.71],
    ['100 g in 350 m', { system: 'ball', metres: 350, grams: 100 }, 285.71],
  ])('%s is so many tex', (_, count, tex) => {
    expect(texOfCount(count)).toBeCloseTo(tex, 2);
  });

  // By definition: a hank of cotton is 840 yards, of worsted 560, counted in a pound of 453.59237 g; a yard is 0.9144 m.
  it.each([
    ['cotton', 840],
    ['worsted', 560],
  ] as const)('in %s is that many hanks in a pound', (system, yards) => {
    const tex = (453.59237 / (yards * 0.9144)) * 1000;
    expect(texOfCount({ system, value: 1, plies: 1 }) / tex).toBeCloseTo(1, 3);
  });

  it.each(['tex', 'metric', 'cotton', 'worsted', 'denier', 'ball'] as const)('in %s says the same yarn', (system) => {
    expect(texOfCount(countIn(system, 285.7, 50))).toBeCloseTo(285.7, 8);
  });

  it('stays within what its system takes, and no count is thicker than any yarn', () => {
    for (const [system, { least, most }] of Object.entries(COUNT_BOUNDS)) {
      for (const value of [least, most]) {
        const tex = texOfCount({ system: system as keyof typeof COUNT_BOUNDS, value, plies: 1 });
        expect(tex).toBeGreaterThan(0);
        expect(tex).toBeLessThanOrEqual(MOST_TEX * 1.001);
      }
    }
    expect(countIn('metric', 1e9, 50)).toMatchObject({ value: COUNT_BOUNDS.metric.least });
  });

  it('that nobody said gives no weight and no length', () => {
    expect(texOf({ count: null })).toBeNull();
    expect(gramsOf(1000, texOf({ count: null }))).toBeNull();
    expect(mmOf(50, null)).toBeNull();
    expect(ballGramsOf({ count: null })).toBe(50);
  });
});

describe('what is on hand', () => {
  const ball = { system: 'ball', metres: 175, grams: 50 } as const;
  it('is what is weighed, or so many balls of what the label says', () => {
    expect(gramsOnHand({ count: ball, onHand: { in: 'balls', amount: 2.5 } })).toBe(125);
    expect(gramsOnHand({ count: ball, onHand: { in: 'grams', amount: 18 } })).toBe(18);
    expect(gramsOnHand({ count: null, onHand: { in: 'balls', amount: 2 } })).toBeNull();
    expect(gramsOnHand({ count: ball, onHand: null })).toBeNull();
    // 18 g of 50 g in 175 m are 63 m.
    expect(mmOf(18, texOfCount(ball))).toBeCloseTo(63_000, 6);
  });
});
