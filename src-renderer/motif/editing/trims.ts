/** What comes out of trimming a motif in each of the ways there are. */
import type { Cell } from '@shared/grid/index.ts';
import type { Measure } from '@shared/motif/repeat/index.ts';

export type TrimName = 'crop-blank-first' | 'crop-blank-last' | 'crop-at-cursor' | 'trim-blank';

export interface Trim {
  readonly name: TrimName;
  readonly width: number;
  readonly height: number;
  /** `offered`, or why not: the drawing would stay as it is, no column is blank, or there is no figure. */
  readonly standing: 'offered' | 'as-drawn' | 'no-blank' | 'empty';
}

/**
 * The ways there are, always all of them, so that each keeps its place. Without
 * blank columns there is nothing to put first or last, and without a figure
 * nothing to trim to.
 */
export function trimsOf(measure: Measure, cursor: Cell): Trim[] {
  const { width, height, repeat, starts, blank } = measure;
  const { left, right, top, bottom } = blank ?? { left: 0, right: 0, top: 0, bottom: 0 };
  const isWhole = repeat.width === width && repeat.height === height;
  const standing = (changes: boolean): Trim['standing'] => (!blank ? 'empty' : changes ? 'offered' : 'as-drawn');
  const from = (name: TrimName, start: Cell): Trim => ({
    name,
    width: repeat.width,
    height: repeat.height,
    standing: standing(!isWhole || start.column % width !== 0 || start.row % height !== 0),
  });
  const byBlank = (name: TrimName, column: number): Trim => {
    const trim = from(name, { column, row: 0 });
    return blank && starts.blank === 0 ? { ...trim, standing: 'no-blank' } : trim;
  };
  return [
    byBlank('crop-blank-first', starts.blankFirst),
    byBlank('crop-blank-last', starts.blankLast),
    from('crop-at-cursor', cursor),
    {
      name: 'trim-blank',
      width: width - left - right,
      height: height - top - bottom,
      standing: standing(left + right + top + bottom > 0),
    },
  ];
}
