/**
 * The words of strands: floats, carries and wraps.
 *
 * A strand is one end of yarn from one ball: the main yarn, a contrast yarn,
 * or, with a ball for each group, the contrast yarn of one group.
 */
import type { Run, Side, Slot } from '../bed/index.ts';

export interface StrandId {
  /** Palette index. */
  readonly yarn: number;
  readonly role: 'main' | 'contrast';
  /** Index of the placed group whose own ball it is; null for the main yarn and for a shared ball. */
  readonly group: number | null;
}

/** Yarn lying behind needles it does not knit. */
export interface Float extends Run {
  readonly strand: StrandId;
  readonly stitches: number;
  readonly mm: number;
  /** What lies loose of it is longer than the limit. */
  readonly isOver: boolean;
  /** The needles at which it is held, hooked or latched up, from left to right. */
  readonly held: readonly Slot[];
}

/** Yarn going from the row it last knitted to the next row that uses it. */
export interface Carry extends Run {
  readonly strand: StrandId;
  readonly toRow: number;
  /** Sideways, in stitches. */
  readonly stitches: number;
  /** Upwards. */
  readonly rows: number;
  /** Sideways and up. */
  readonly mm: number;
  readonly isOver: boolean;
}

/** A strand that is cut after a row and joined again at a later one. */
export interface Cut {
  readonly strand: StrandId;
  /** It would be too far up to be carried, or, where that is asked for, too far aside. */
  readonly because: 'far-up' | 'far-aside';
  readonly toRow: number;
  /** How far aside it would have been. */
  readonly stitches: number;
  /** How far up it would have been. */
  readonly rows: number;
  readonly mm: number;
}

/** A strand of main looped over the needle next to the figure's edge. */
export interface Wrap {
  readonly needle: Slot;
  /** The edge of the figure it closes, which is the carriage's side. */
  readonly edge: Side;
  readonly strand: StrandId;
}
