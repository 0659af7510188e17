import { describe, expect, it } from 'vitest';
import { outlineOf, scheduleOf, stepsFromText } from '@shared/piece/index.ts';
import { words } from '@shared/words/index.ts';

const standing = { oddStitch: 'right', offset: 0, hemRows: 0 } as const;

function tapered(stitches: number, stitchesAtTop: number, rows: number, straightRows: number) {
  return scheduleOf(outlineOf({ kind: 'tapered', stitches, stitchesAtTop, rows, straightRows }, standing));
}

describe('shaping as a knitter reads it', () => {
  it.each([
    // A hobby article working the same formula, computed again: 12 + 128 = 140 rows, and one that is straight.
    {
      from: 60,
      to: 132,
      rows: 141,
      straight: 1,
      phrases: ['3rd row from row **3**, **4 times**', '4th row from row **16**, **32 times**'],
    },
    // A hobby article on a sleeve at 28 × 40 in 10 cm, computed again: increases stop 20 rows early.
    {
      from: 72,
      to: 156,
      rows: 196,
      straight: 20,
      phrases: ['4th row from row **4**, **34 times**', '5th row from row **141**, **8 times**'],
    },
    // A hobby article, 2014, last step computed: 11 increases a side over 108 rows, and one that is straight.
    {
      from: 38,
      to: 60,
      rows: 109,
      straight: 1,
      phrases: ['9th row from row **9**, **2 times**', '10th row from row **28**, **9 times**'],
    },
  ])(
    'widens $from to $to stitches over $rows rows, the last $straight straight',
    ({ from, to, rows, straight, phrases }) => {
      expect(words.piece.whatItIs.shaping(tapered(from, to, rows, straight))).toBe(
        `Increase 1 stitch at each edge every ${phrases[0]}, then every ${phrases[1]}.`,
      );
    },
  );

  it('says decrease where the piece narrows', () => {
    expect(words.piece.whatItIs.shaping(tapered(40, 20, 101, 1))).toBe(
      'Decrease 1 stitch at each edge every 10th row from row **10**, **10 times**.',
    );
  });

  it('says the odd stitch of an uneven difference at its edge', () => {
    // By hand: 10 to 15 stitches in 9 rows, the last one straight: 2 pairs on rows 4 and 8, and the odd one between them.
    expect(words.piece.whatItIs.shaping(tapered(10, 15, 9, 1))).toBe(
      'Increase 1 stitch at each edge every 4th row from row **4**, **2 times**; increase 1 stitch at the right edge before row **6**.',
    );
  });

  it('goes in to the waist and out to the chest', () => {
    const shape = { kind: 'body', stitches: 120, stitchesAtWaist: 100, stitchesAtChest: 116, rows: 200 } as const;
    const steps = scheduleOf(outlineOf({ ...shape, rowsToWaist: 60, rowsToChest: 58 }, standing));
    // By hand: 60 / 10 = 6; 58 = 6 × 7 + 2 × 8.
    expect(words.piece.whatItIs.shaping(steps)).toBe(
      'Decrease 1 stitch at each edge every 6th row from row **6**, **10 times**, then increase 1 stitch at each edge every 7th row from row **67**, **6 times**, then every 8th row from row **110**, **2 times**.',
    );
  });

  it('says what one edge does alone, and where it begins', () => {
    const lines =
      'row 40: -4 at the left\nrow 41: -4 at the right\nrow 42: -1 at the left\nrow 44: -1 at the left\nrow 45: -1 at the left';
    const steps = scheduleOf(
      outlineOf({ kind: 'steps', stitches: 60, rows: 80, steps: stepsFromText(lines) }, standing),
    );
    expect(words.piece.whatItIs.shaping(steps)).toBe(
      'Decrease 4 stitches at the left edge before row **40**, then decrease 1 stitch at the left edge every 2nd row from row **42**, **2 times**, then before row **45**; decrease 4 stitches at the right edge before row **41**.',
    );
  });

  it('has nothing to say of straight edges', () => {
    const steps = scheduleOf(outlineOf({ kind: 'rectangle', stitches: 80, rows: 40 }, standing));
    expect(steps).toEqual([]);
    expect(words.piece.whatItIs.shaping(steps)).toBeNull();
  });
});
