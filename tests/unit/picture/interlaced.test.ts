/** Interlaced PNGs (ISO/IEC 15948, 8.2) of every depth, against the same picture that is not interlaced. */
import { describe, expect, it } from 'vitest';
import { readMotifPicture } from '@shared/picture/index.ts';
import { bitRows, rawPng } from './pictures.ts';

/** First column and row of each pass, and its steps, as the standard's figure has them. */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

describe('an interlaced PNG', () => {
  it.each([
    { depth: 1, width: 1, height: 1 },
    { depth: 1, width: 13, height: 11 },
    { depth: 2, width: 9, height: 5 },
    { depth: 4, width: 8, height: 8 },
    { depth: 8, width: 3, height: 10 },
    { depth: 1, width: 5, height: 1 },
  ])('of $depth bits and $width × $height pixels is the picture itself', ({ depth, width, height }) => {
    const sample = (x: number, y: number): number => ((x * 5 + y * 3 + ((x * y) >> 1)) % 7 < 3 ? 0 : 2 ** depth - 1);
    const rows = (columns: readonly number[], lines: readonly number[]): number[][] =>
      lines.map((y) =>
        bitRows(
          columns.map((x) => sample(x, y)),
          depth,
        ),
      );
    const every = (from: number, step: number, to: number): number[] =>
      Array.from({ length: Math.max(0, Math.ceil((to - from) / step)) }, (_, index) => from + index * step);
    const plain = rawPng({ width, height, depth, colourType: 0, rows: rows(every(0, 1, width), every(0, 1, height)) });
    const passes = PASSES.flatMap(([x, y, across, down]) => {
      const columns = every(x, across, width);
      return columns.length === 0 ? [] : rows(columns, every(y, down, height));
    });
    const interlaced = rawPng({ width, height, depth, colourType: 0, rows: passes, isInterlaced: true });
    expect(readMotifPicture(interlaced)).toEqual(readMotifPicture(plain));
  });
});
