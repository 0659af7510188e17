/** What counts as drawn into cells of squared paper, and what of that lies as writing does. */
import { describe, expect, it } from 'vitest';
import { blankPicture } from '@shared/reading/index.ts';
import { withDrawnCells } from '../../../src-shared/reading/drawn-cells.ts';

const SIDE = 20;
const CELLS = 9;
const MARGIN = 10;
const WIDTH = CELLS * SIDE + 2 * MARGIN;

/** How dark a place of the sheet is, 0 … 1, by cell and place in it. */
type Ink = (column: number, row: number, u: number, v: number) => number;

/** Each cell of a squared sheet: `#` drawn about its middle, `w` drawn aside, `.` blank. */
function seen(ink: Ink, lightAt: (x: number) => number = () => 1): string[] {
  const picture = blankPicture(WIDTH, WIDTH);
  for (let y = 0; y < WIDTH; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const [column, row] = [Math.floor((x - MARGIN) / SIDE), Math.floor((y - MARGIN) / SIDE)];
      const [u, v] = [(x - MARGIN - column * SIDE + 0.5) / SIDE, (y - MARGIN - row * SIDE + 0.5) / SIDE];
      const isLine = u < 0.05 || v < 0.05;
      const dark = isLine ? 0.4 : ink(column, row, u, v);
      const at = (y * WIDTH + x) * 4;
      picture.rgba.fill(240 * (1 - dark) * lightAt(x), at, at + 3);
      picture.rgba[at + 3] = 255;
    }
  }
  const none = new Float32Array(0);
  const cells = CELLS * CELLS;
  const sides = {
    within: { left: 0, top: 0, right: CELLS, bottom: CELLS },
    columns: CELLS,
    rows: CELLS,
    upright: none,
    level: none,
    uprightRidge: none,
    levelRidge: none,
    chance: 0,
    middles: none,
    filled: new Uint8Array(cells),
    isEven: new Uint8Array(cells),
    isSeen: new Uint8Array(cells).fill(1),
  };
  const at = (column: number, row: number) => ({ x: MARGIN + column * SIDE, y: MARGIN + row * SIDE });
  const { filled, isEven } = withDrawnCells(picture, { at, misfit: 0 }, sides, new Uint8Array(cells));
  return Array.from({ length: CELLS }, (_, row) =>
    Array.from({ length: CELLS }, (__, column) => {
      const cell = row * CELLS + column;
      return filled[cell] === 0 ? '.' : isEven[cell] === 1 ? '#' : 'w';
    }).join(''),
  );
}

const BLANK = '.'.repeat(CELLS);
/** Nothing but the cell in the middle of the sheet. */
const one = (mark: string): string[] => [
  ...Array<string>(4).fill(BLANK),
  `....${mark}....`,
  ...Array<string>(4).fill(BLANK),
];
const inMiddle =
  (ink: (u: number, v: number) => number): Ink =>
  (column, row, u, v) =>
    column === 4 && row === 4 ? ink(u, v) : 0;

describe('drawn into a cell', () => {
  it.each([
    [
      'a thin stroke from corner to corner',
      (u: number, v: number) => (Math.abs(u - v) < 0.07 && u > 0.2 && u < 0.8 ? 0.9 : 0),
    ],
    [
      'a ring, blank in the middle',
      (u: number, v: number) => (Math.abs(Math.hypot(u - 0.5, v - 0.5) - 0.24) < 0.06 ? 0.9 : 0),
    ],
    ['a dot', (u: number, v: number) => (Math.hypot(u - 0.5, v - 0.5) < 0.2 ? 0.9 : 0)],
    ['faint pencil all over', () => 0.2],
    ['strokes of a pencil', (u: number, v: number) => ((u + v) % 0.25 < 0.12 ? 0.6 : 0)],
  ])('is %s', (_, ink) => {
    expect(seen(inMiddle(ink))).toEqual(one('#'));
  });

  it('is no speck, be it as dark as ink', () => {
    expect(seen(inMiddle((u, v) => (u > 0.4 && u < 0.6 && v > 0.5 && v < 0.7 ? 0.9 : 0)))).toEqual(one('.'));
  });

  it('is no shadow with a sharp edge, but what is drawn in the shadow is', () => {
    const shade = (x: number): number => (x > 0.6 * WIDTH ? 0.45 : 1);
    expect(seen(() => 0, shade)).toEqual(Array<string>(CELLS).fill(BLANK));
    const inked = seen(
      (column, row, u, v) =>
        row === 4 && (column === 2 || column === 7) && Math.hypot(u - 0.5, v - 0.5) < 0.3 ? 0.9 : 0,
      shade,
    );
    expect(inked[4]).toBe('..#....#.');
  });

  it('is told from writing, which lies in cells as it happens', () => {
    expect(seen(inMiddle((u) => (u > 0.65 && u < 0.8 ? 0.9 : 0)))).toEqual(one('w'));
  });
});
