/** The bed as it is drawn: what stands how, what is labelled, and which needles are bracketed. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import type { BedAt } from '@shared/knitting/index.ts';
import { bedShapes, FORWARD, WORKING } from '../../../src-renderer/knit/bed-drawing.ts';

/** L12 … R12: L12 and R12 out of work, L3 and R3 forward, R4 wrapped; a group from L5 to R5. */
const BED: BedAt = {
  showsForward: true,
  groups: [
    {
      pattern: { kind: 'band', number: 0 },
      motif: 'm',
      needles: { first: -5 as Slot, last: 4 as Slot },
      copies: 1,
      firstRow: 1,
      lastRow: 9,
    },
  ],
  needles: Array.from({ length: 24 }, (_, index) => {
    const needle = (index - 12) as Slot;
    const state =
      index === 0 || index === 23 ? 'out-of-work' : needle === -3 || needle === 2 ? 'forward' : ('working' as const);
    return { needle, state, isWrapped: needle === 3, yarn: null };
  }),
};

const strokes = (path: string): number[] => [...path.matchAll(/M(-?[\d.]+) 0V/g)].map(([, x]) => Number(x));

describe('the bed as it is drawn', () => {
  const shapes = bedShapes(BED, 10);

  it('has each needle once, by how it stands, from left to right', () => {
    expect(strokes(shapes.out)).toEqual([5, 235]);
    expect(strokes(shapes.forward)).toEqual([95, 145]);
    // Forward ones cover theirs.
    expect(strokes(shapes.working)).toHaveLength(22);
    expect(shapes.forwardCount).toBe(2);
    expect(shapes.width).toBe(240);
  });

  it('tells forward needles by their form: twice as long, and with a head each', () => {
    expect(FORWARD).toBeGreaterThan(2 * WORKING);
    expect(shapes.heads.match(/M/g)).toHaveLength(2);
  });

  it('labels every tenth needle, with no needle 0, and the wrapped one', () => {
    expect(shapes.labels).toEqual([
      { x: 25, text: 'L10', isWrap: false },
      { x: 155, text: 'R4', isWrap: true },
      { x: 215, text: 'R10', isWrap: false },
    ]);
    expect(shapes.loops.match(/M/g)).toHaveLength(1);
  });

  it('brackets a group from its first needle to its last, blank ones too', () => {
    expect(shapes.groups).toEqual([{ first: 70, last: 170, index: 0 }]);
  });

  it('writes no label over another, and that of a needle to wrap for certain', () => {
    const labels = (pitch: number, letter?: number): string[] =>
      bedShapes(BED, pitch, letter).labels.map(({ text }) => text);
    // With its word the one to wrap takes twice the room of a tenth.
    expect(labels(3)).toEqual(['R4']);
    expect(labels(4)).toEqual(['L10', 'R4']);
    expect(labels(4, 22)).toEqual(['R4']);
  });
});
