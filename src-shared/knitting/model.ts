/**
 * What a knitter follows at the machine: the running order of one piece in one
 * size with what is seen of each row, by itself and apart from any project.
 *
 * A piece on the needles goes on as it was begun while its design changes, so
 * this is plain data that can be kept as text (`order-file.ts`).
 */
import type { Machine, Run, Slot } from '../bed/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { PatternName } from '../pattern/index.ts';
import type { RunningOrder, YarnIndex } from '../plan/index.ts';

/** Neighbouring needles that knit the same yarn. */
export interface YarnRun extends Run {
  readonly yarn: YarnIndex;
}

/** Copies of a motif side by side, and the rows (1-based) that they stand on. */
export interface StandingGroup {
  readonly pattern: PatternName;
  readonly motif: MotifId;
  /** From its leftmost needle to its rightmost, blank ones too. */
  readonly needles: Run;
  readonly copies: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

export interface KnittingOrder {
  readonly order: RunningOrder;
  /** The needles that knit a yarn other than main, left to right; index 0 is row 1. */
  readonly contrast: readonly (readonly YarnRun[])[];
  /** From left to right, pattern by pattern; an all-over has none. */
  readonly groups: readonly StandingGroup[];
  /** The palette: yarns are indices into it. */
  readonly yarns: readonly { readonly name: string; readonly colour: string }[];
  readonly mainYarn: YarnIndex;
  readonly motifs: readonly { readonly id: MotifId; readonly name: string }[];
  /** How the needles of a pattern row come to be chosen, and whether they are seen to stand forward. */
  readonly chooses: Machine['chooses'];
}

/** What stands forward takes the second yarn; a needle out of work holds no stitch. */
export type NeedleState = 'forward' | 'working' | 'out-of-work';

/** A needle of the bed as it has to stand. */
export interface BedNeedle {
  readonly needle: Slot;
  readonly state: NeedleState;
  /** A strand is looped over it before the row. */
  readonly isWrapped: boolean;
  /** What it knits the row in; null where it is out of work, or no row follows. */
  readonly yarn: YarnIndex | null;
}
