import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extent, stagger, type HungLabel, type WantedLabel } from '@shared/output/piece/stagger.ts';

const label = (text: string, x: number, rank = 0): WantedLabel => ({
  text,
  x,
  widthMm: 7,
  rank,
  anchors: ['start', 'middle', 'end'],
});

function overlap(a: HungLabel<WantedLabel>, b: HungLabel<WantedLabel>): boolean {
  const [aLeft, aRight] = extent(a);
  const [bLeft, bRight] = extent(b);
  return a.level === b.level && aLeft < bRight && bLeft < aRight;
}

/** The line of `a` runs through the text of `b`. */
function strikes(a: HungLabel<WantedLabel>, b: HungLabel<WantedLabel>): boolean {
  const [left, right] = extent(b);
  return a.level > b.level && a.label.x > left && a.label.x < right;
}

describe('labels on the ruler', () => {
  it('stand on one level where there is room', () => {
    const { hung } = stagger([label('L48', 10), label('L13', 40), label('R12', 60)], 5);
    expect(hung.map(({ level }) => level)).toEqual([0, 0, 0]);
  });

  it('go down a level where they would meet', () => {
    const { hung, left } = stagger([label('L2', 10), label('L1', 11.5), label('R1', 13)], 5);
    expect(left).toEqual([]);
    expect(new Set(hung.map(({ level }) => level)).size).toBeGreaterThan(1);
  });

  it('are given places by rank where there is not room for all', () => {
    const wanted = Array.from({ length: 60 }, (_, i) => label(`${i}`, i * 1.5, i % 2));
    const { hung, left } = stagger(wanted, 2);
    expect(hung.length + left.length).toBe(60);
    expect(left.length).toBeGreaterThan(0);
    expect(hung.filter(({ label: { rank } }) => rank === 0).length).toBeGreaterThan(
      hung.filter(({ label: { rank } }) => rank === 1).length,
    );
  });

  it('never cover each other, and no line runs through a text', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 150 }), { maxLength: 40 }), (xs) => {
        const { hung, left } = stagger(
          xs.map((x) => label(`${x}`, x, x % 3)),
          5,
        );
        expect(hung.length + left.length).toBe(xs.length);
        const meeting = hung.filter((a) => hung.some((b) => a !== b && (overlap(a, b) || strikes(a, b))));
        expect(meeting).toEqual([]);
      }),
    );
  });
});
