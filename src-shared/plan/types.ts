/** The row-by-row plan: all that is knitted, in one value. What will go wrong with it is found by `check/`. */
import type { LooseFloat } from '../anchors/index.ts';
import type { Slot } from '../bed/index.ts';
import type { EndNeedles, Fabric, PlacedGroup, PlacedPatterns } from '../fabric/index.ts';
import type { BeyondBed, Gauges, SectionName } from '../piece/index.ts';
import type { Carry, Chain, Cut, LaidRow, Lift, OwnBall, Wrap } from '../strands/index.ts';
import type { WrapStrand, YarnNeed } from '../yarn/index.ts';

/** A row as it is laid, and what is done before and after it. */
export interface PlanRow extends Omit<LaidRow, 'strands'> {
  /** The row counter after this row. */
  readonly row: number;
  readonly section: SectionName;
  /** The edge needles that end-needle selection puts to contrast; null where there are none. */
  readonly endNeedles: EndNeedles | null;
  /** The needles that knit an anchor, left to right. */
  readonly anchors: readonly Slot[];
  readonly wraps: readonly Wrap[];
  readonly carries: readonly Carry[];
  /** Strands that are cut after it, to be joined again further up. */
  readonly cuts: readonly Cut[];
  /** Its floats that are lifted onto a needle after it. */
  readonly lifts: readonly Lift[];
  /** Columns of floats, its own the uppermost, that are latched up after it. */
  readonly chains: readonly Chain[];
}

export interface Plan extends PlacedPatterns {
  readonly gauges: Gauges;
  /** Where the piece leaves the bed, or null where all of it stands on needles that there are. */
  readonly beyondBed: BeyondBed | null;
  /** All groups of all bands, in that order. */
  readonly groups: readonly PlacedGroup[];
  /** The groups that have balls of their own, and the needles that are knitted from these. */
  readonly ownBalls: readonly OwnBall[];
  /** The rows (1-based) on which end-needle selection is on. */
  readonly endNeedleRows: ReadonlySet<number>;
  /** With the anchors that patterns wish for. */
  readonly fabric: Fabric;
  /** Floats of each row that stay longer than their patterns wish; index 0 is row 1, undefined where none do. */
  readonly looseFloats: readonly (readonly LooseFloat[] | undefined)[];
  /** Index 0 is row 1. */
  readonly rows: readonly PlanRow[];
  readonly wrapStrands: readonly WrapStrand[];
  readonly yarn: YarnNeed;
}
