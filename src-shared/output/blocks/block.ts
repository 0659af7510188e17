/** A stretch of the sheet that has a height and can be set down anywhere. */
import type { SheetElement } from '../model.ts';

export interface Block {
  readonly heightMm: number;
  /** The least height in which it can begin; less than the whole if it can be split. */
  readonly leastMm: number;
  /** Left free above it, but not at the top of a column. */
  readonly spaceAboveMm: number;
  /** It must not be the last in its column. */
  readonly keepsWithNext: boolean;
  /** Its elements, with the top left corner at (`x`, `y`). */
  draw(x: number, y: number): SheetElement[];
  /** What fits in `heightMm` (at least {@link leastMm}) and what is left over. */
  split(heightMm: number): readonly [fits: Block, rest: Block];
}

/** What is no taller than this stays in one part; what is taller may begin in as much. */
export const KEPT_WHOLE_MM = 55;

/** A block that stays in one part. */
export function wholeBlock(
  heightMm: number,
  spaceAboveMm: number,
  draw: (x: number, y: number) => SheetElement[],
  keepsWithNext = false,
): Block {
  return {
    heightMm,
    leastMm: heightMm,
    spaceAboveMm,
    keepsWithNext,
    draw,
    split() {
      throw new RangeError('This block stays in one part');
    },
  };
}
