/** What of squared paper is drawn on, and what stands beside it. */
import { describe, expect, it } from 'vitest';
import { drawnPart } from '../../../src-shared/reading/drawn-part.ts';

/** `#` is filled evenly, `w` has strokes of writing through it, all else is paper; around it lie two cells more. */
function sheet(...lines: readonly string[]) {
  const [columns, rows] = [(lines[0] as string).length + 4, lines.length + 4];
  const marked = (marks: string): Uint8Array =>
    Uint8Array.from({ length: columns * rows }, (_, i) =>
      marks.includes(lines[Math.floor(i / columns) - 2]?.[(i % columns) - 2] ?? ' ') ? 1 : 0,
    );
  const within = { left: -2, top: -2, right: columns - 2, bottom: rows - 2 };
  const none = new Float32Array(0);
  return {
    within,
    columns,
    rows,
    upright: none,
    level: none,
    uprightRidge: none,
    levelRidge: none,
    chance: 0,
    middles: none,
    filled: marked('#w'),
    isEven: marked('#'),
    isSeen: new Uint8Array(columns * rows).fill(1),
  };
}

function drawn(...lines: readonly string[]) {
  const sides = sheet(...lines);
  return drawnPart(sides, new Uint8Array(sides.columns * sides.rows), sides.within);
}

const FIGURE = ['...##...##', '..#####...', '.########.', '##########', '.###..###.'];

describe('the part of squared paper that is drawn on', () => {
  it('is all that is filled', () => {
    expect(drawn(...FIGURE)).toEqual({ left: 0, top: 0, right: 10, bottom: 5 });
  });

  it('leaves a title out that stands a row away', () => {
    expect(drawn('..wwwww...', '..........', ...FIGURE)).toEqual({ left: 0, top: 2, right: 10, bottom: 7 });
    expect(drawn('..wwwww...', '...w.ww...', '..........', ...FIGURE)).toEqual({
      left: 0,
      top: 3,
      right: 10,
      bottom: 8,
    });
  });

  it('leaves a title out though some of its cells look as if they were filled', () => {
    expect(drawn('..w#w#w...', '..........', ...FIGURE)).toEqual({ left: 0, top: 2, right: 10, bottom: 7 });
  });

  it('keeps a row of figures a row away, though strokes go through one of them', () => {
    expect(drawn('..#w##....', '..........', ...FIGURE)).toEqual({ left: 0, top: 0, right: 10, bottom: 7 });
  });

  it('keeps cells of the figure that stand a row away', () => {
    expect(drawn('...#....#.', '..........', ...FIGURE)).toEqual({ left: 0, top: 0, right: 10, bottom: 7 });
    expect(drawn('..#.......', '...#....#.', '..........', ...FIGURE)).toEqual({
      left: 0,
      top: 0,
      right: 10,
      bottom: 8,
    });
  });

  it('leaves numbers out at every fifth row, and keeps cells that are fives apart', () => {
    const tall = Array.from({ length: 20 }, () => '##########');
    const marked = (mark: string) =>
      drawn(...tall.map((line, row) => line + (row % 5 === 4 ? mark : '.'.repeat(mark.length))));
    expect(marked('w')).toEqual({ left: 0, top: 0, right: 10, bottom: 20 });
    expect(marked('#w')).toEqual({ left: 0, top: 0, right: 10, bottom: 20 });
    expect(marked('#')).toEqual({ left: 0, top: 0, right: 11, bottom: 20 });
  });
});
