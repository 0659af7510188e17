/** What comes out of trimming a motif in each of the ways there are. */
import type { Cell } from '@shared/grid/index.ts';
import type { Measure } from '@shared/motif/repeat/index.ts';

export type TrimName = 'crop-blank-first' | 'crop-blank-last' | 'crop-at-cursor' | 'trim-blank';

export interface Trim {
  readonly name: TrimName;
  readonly width: number;
  readonly height: number;
  /** False where the drawing would stay as it is. */
  readonly changes: boolean;
}

/**
 * The ways that lead to different drawings. Without blank columns there is
 * nothing to put first or last, and without a figure nothing to trim to.
 */
export function trimsOf(measure: Measure, cursor: Cell): Trim[] {
  const { width, height, repeat, starts, blank } = measure;
  if (!blank) return [];
  const isWhole = repeat.width === width && repeat.height === height;
  const from = (name: TrimName, start: Cell): Trim => ({
    name,
    width: repeat.width,
    height: repeat.height,
    changes: !isWhole || start.column % width !== 0 || start.row % height !== 0,
  });
  const { left, right, top, bottom } = blank;
  return [
    ...(starts.blank === 0
      ? []
      : [
          from('crop-blank-first', { column: starts.blankFirst, row: 0 }),
          from('crop-blank-last', { column: starts.blankLast, row: 0 }),
        ]),
    from('crop-at-cursor', cursor),
    {
      name: 'trim-blank',
      width: width - left - right,
      height: height - top - bottom,
      changes: left + right + top + bottom > 0,
    },
  ];
}
