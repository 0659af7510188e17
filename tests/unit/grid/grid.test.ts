import { describe, expect, it } from 'vitest';
import { cellAt, crop, gridFromText, gridToText, makeGrid, resize, sameGrid } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';

const flag = gridFromText(['.XX', '..X'], '.X');

describe('a chart', () => {
  it('has its first row at the bottom and its first column at the left', () => {
    expect(cellAt(flag, 0, 0)).toBe(0);
    expect(cellAt(flag, 2, 0)).toBe(1);
    expect(cellAt(flag, 1, 0)).toBe(0);
    expect(cellAt(flag, 1, 1)).toBe(1);
    expect(gridToText(flag, '.X')).toEqual(['.XX', '..X']);
  });

  it('in text must be even and known', () => {
    expect(() => gridFromText(['.XX', '.X'], '.X')).toThrow('Line 2');
    expect(() => gridFromText(['.X', '.?'], '.X')).toThrow('"?"');
  });

  it.each([
    [0, 5],
    [5, 0],
    [-1, 5],
    [1.5, 5],
    [1001, 5],
    [5, 4001],
  ])('of %s × %s cells is refused', (width, height) => {
    expect(outcome(() => makeGrid(width, height))).toMatchObject({ problem: { code: 'motif-too-large' } });
  });

  it('may be as large as 1000 × 4000', () => {
    expect(makeGrid(1000, 4000, 3).cells.every((cell) => cell === 3)).toBe(true);
  });

  it('is cropped to a part of itself', () => {
    expect(gridToText(crop(flag, 1, 0, 2, 1), '.X')).toEqual(['.X']);
    expect(sameGrid(crop(flag, 0, 0, 3, 2), flag)).toBe(true);
  });

  it.each([
    { to: [5, 2], at: [1, 0], rows: ['o.XXo', 'o..Xo'] },
    { to: [3, 3], at: [0, 1], rows: ['.XX', '..X', 'ooo'] },
    { to: [3, 3], at: [0, 0], rows: ['ooo', '.XX', '..X'] },
    { to: [2, 2], at: [-1, 0], rows: ['XX', '.X'] },
    { to: [3, 1], at: [0, -1], rows: ['.XX'] },
    { to: [1, 1], at: [-9, 0], rows: ['o'] },
  ])('resized to $to with $at added left and below keeps its drawing', ({ to, at, rows }) => {
    const [width = 0, height = 0] = to;
    expect(gridToText(resize(flag, width, height, 2, ...at), '.Xo')).toEqual(rows);
  });
});
