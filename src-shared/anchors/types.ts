/** The words of anchors on a fabric: a stitch added to break a float, in the yarn of the float. */
import type { Run, Slot } from '../bed/index.ts';
import type { Fabric } from '../fabric/index.ts';

/** A float that stays longer than its pattern wishes. */
export interface LooseFloat extends Run {
  readonly yarn: number;
  /** Index among the patterns of the piece. */
  readonly pattern: number;
}

/** A fabric with its anchors. */
export interface Anchored {
  readonly fabric: Fabric;
  /** The needles of each row that take an anchor, left to right; index 0 is row 1, undefined where none do. */
  readonly rows: readonly (readonly Slot[] | undefined)[];
  /** Of each row; index 0 is row 1, undefined where none stays so. */
  readonly loose: readonly (readonly LooseFloat[] | undefined)[];
}
