import { describe, expect, it } from 'vitest';
import { outlineOf, scheduleOf } from '@shared/piece/index.ts';
import { words } from '@shared/words/index.ts';

const standing = { oddStitch: 'right', offset: 0 } as const;

function tapered(stitches: number, stitchesAtTop: number, rows: number, straightRows: number) {
  return scheduleOf(outlineOf({ kind: 'tapered', stitches, stitchesAtTop, rows, straightRows }, standing));
}

describe('shaping as a knitter reads it', () => {
  it.each([
    // A hobby article working the same formula, computed again: 12 + 128 = 140 rows.
    { from: 60, to: 132, rows: 140, straight: 0, said: ['3rd row **4 times**', '4th row **32 times**'] },
    // A hobby article on a sleeve at 28 × 40 in 10 cm, computed again: increases stop 20 rows early.
    { from: 72, to: 156, rows: 196, straight: 20, said: ['4th row **34 times**', '5th row **8 times**'] },
    // A hobby article, 2014, last step computed: 11 increases a side over 108 rows.
    { from: 38, to: 60, rows: 108, straight: 0, said: ['9th row **2 times**', '10th row **9 times**'] },
  ])(
    'widens $from to $to stitches over $rows rows, the last $straight straight',
    ({ from, to, rows, straight, said }) => {
      expect(words.piece.whatItIs.shaping(tapered(from, to, rows, straight))).toBe(
        `1 stitch more at each edge every ${said[0]}, then every ${said[1]}.`,
      );
    },
  );

  it('says fewer where the piece narrows', () => {
    expect(words.piece.whatItIs.shaping(tapered(40, 20, 100, 0))).toBe(
      '1 stitch fewer at each edge every 10th row **10 times**.',
    );
  });

  it('has nothing to say of straight edges', () => {
    const steps = scheduleOf(outlineOf({ kind: 'rectangle', stitches: 80, rows: 40 }, standing));
    expect(steps).toEqual([]);
    expect(words.piece.whatItIs.shaping(steps)).toBeNull();
  });
});
