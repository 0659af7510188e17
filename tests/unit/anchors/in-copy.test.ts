import { describe, expect, it } from 'vitest';
import { anchorsInCopy, anchorsInFloat, looseStretches, type CopyQuestion } from '@shared/anchors/index.ts';
import { gridFromText } from '@shared/grid/index.ts';

/** The drawing with its anchors as `o` (of a contrast) and `.` (of main, in the figure). */
function drawn(lines: readonly string[], asked: Partial<CopyQuestion> = {}): string[] {
  const copy = gridFromText(lines, ' #x');
  const rows = anchorsInCopy({
    copy,
    main: 0,
    longest: 5,
    isBehindFigure: false,
    isBesideItself: false,
    isAboveItself: false,
    step: 0,
    never: new Set(),
    always: new Set(),
    ...asked,
  });
  return rows
    .map((floats, row) => {
      const line = [...(lines[copy.height - 1 - row] as string)];
      for (const { yarn, first, anchors } of floats) {
        for (const at of anchors) line[(first + at) % copy.width] = yarn === 0 ? '.' : 'o';
      }
      return line.join('');
    })
    .reverse();
}

describe('anchors of a float', () => {
  const open = (length: number): Uint8Array => new Uint8Array(length).fill(1);

  it('are none while it is within the limit', () => {
    expect(anchorsInFloat(open(5), 5)).toEqual([]);
    expect(anchorsInFloat(open(1000), 1000)).toEqual([]);
  });

  it('stand in the middle, and evenly', () => {
    expect(anchorsInFloat(open(7), 5)).toEqual([3]);
    expect(anchorsInFloat(open(17), 5)).toEqual([5, 11]);
    expect(anchorsInFloat(open(9), 1)).toEqual([1, 3, 5, 7]);
  });

  it('leave loose what they cannot break, and no more', () => {
    const needles = open(20).fill(0, 8, 18);
    expect(anchorsInFloat(needles, 5)).toEqual([3, 7, 18]);
    expect(looseStretches(20, [3, 7, 18], 5)).toEqual([{ first: 8, last: 17 }]);
  });
});

describe('anchors of a copy', () => {
  it('are staggered from row to row', () => {
    expect(
      drawn([
        '#         #', //
        '#         #',
        '#         #',
      ]),
    ).toEqual([
      '#    o    #', //
      '#   o     #',
      '#    o    #',
    ]);
  });

  it('keep off the outline of the figure, corners too', () => {
    expect(
      drawn([
        '#         #', //
        '     #     ',
      ])[0],
    ).toBe('#  o   o  #');
  });

  it('go on from one copy into the next', () => {
    expect(drawn(['   ##    '], { isBesideItself: true })).toEqual(['   ##   o']);
    expect(drawn(['   ##    '])).toEqual(['   ##    ']);
  });

  it('speckle a solid figure only where that is asked for, two cells inside it', () => {
    const block = Array.from({ length: 7 }, () => '  #########  ');
    expect(drawn(block)).toEqual(block);
    expect(drawn(block, { isBehindFigure: true }).map((line) => line.indexOf('.'))).toEqual([-1, -1, 6, 5, 6, -1, -1]);
  });

  it('of two contrasts are each of its own yarn, on cells of their own', () => {
    expect(drawn(['#x         #x'])).toEqual(['#x   oo    #x']);
  });

  it('are none on a copy of one row that stands on itself', () => {
    expect(drawn(['#        '], { isBesideItself: true, isAboveItself: true })).toEqual(['#        ']);
  });

  it('are none where all is figure, whatever is asked', () => {
    for (const longest of [1, 1000]) {
      for (const isBesideItself of [false, true]) {
        expect(drawn(['####', '####'], { longest, isBesideItself, isBehindFigure: true })).toEqual(['####', '####']);
      }
    }
  });
});
