/** The row-by-row plan: all that is knitted, in one value. What will go wrong with it is found by `check/`. */
import type { Run, Side } from '../bed/index.ts';
import type { Fabric, PlacedGroup, PlacedPatterns } from '../fabric/index.ts';
import type { BeyondBed, Gauges, SectionName } from '../piece/index.ts';
import type { Carry, Float, Wrap } from '../strands/index.ts';
import type { WrapStrand, YarnNeed } from '../yarn/index.ts';
import type { HemRow } from './hem-notes.ts';

export interface PlanRow {
  /** The row counter after this row. */
  readonly row: number;
  readonly section: SectionName;
  /** The carriage's side before the row. */
  readonly from: Side;
  readonly edges: Run;
  /** Needles that knit a yarn other than main, left to right, each run in one yarn. */
  readonly contrast: readonly (Run & { readonly yarn: number })[];
  /** False on a row all in contrast, on which main waits. */
  readonly isMainKnitted: boolean;
  readonly wraps: readonly Wrap[];
  readonly floats: readonly Float[];
  readonly carries: readonly Carry[];
}

export interface Plan extends PlacedPatterns {
  readonly gauges: Gauges;
  /** Where the piece leaves the bed, or null where all of it stands on needles that there are. */
  readonly beyondBed: BeyondBed | null;
  /** The rows on which a folded hem asks for something. */
  readonly hem: readonly HemRow[];
  /** All groups of all bands, in that order. */
  readonly groups: readonly PlacedGroup[];
  readonly fabric: Fabric;
  /** Index 0 is row 1. */
  readonly rows: readonly PlanRow[];
  readonly wrapStrands: readonly WrapStrand[];
  readonly yarn: YarnNeed;
}
