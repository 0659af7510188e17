/** What will go wrong or must be known, as codes and numbers; `words/` says it. */
import type { Run, Side, Slot } from '../bed/index.ts';
import type { PatternName } from '../pattern/index.ts';
import type { OddDifference } from '../piece/index.ts';
import type { CoarserBed, FewerStitches } from './coarser-bed.ts';
import type { Panels } from './panels.ts';

/** What can be done about a piece that leaves the bed. */
export type BedRemedy =
  | {
      /** So many needles to the right (negative: to the left), to an offset from the centre of `offset`. */
      readonly kind: 'move';
      readonly needles: number;
      readonly offset: number;
    }
  | {
      readonly kind: 'divide';
      readonly panels: Panels | null;
      readonly looser: FewerStitches;
      readonly coarser: CoarserBed | null;
    };

/** The stitches that a seam takes at each edge. */
export interface Sewn {
  readonly left: number;
  readonly right: number;
}

/** The fewest stitches that would have to change their yarn so that one pass feeds each row. */
export interface FewerYarns {
  /** On all rows together. */
  readonly stitches: number;
  /** Where to begin: the stitches of a yarn of which the lowest of the rows has least. */
  readonly row: number;
  readonly yarn: number;
  readonly needles: readonly Run[];
}

/** What will go wrong or must be known, as codes and numbers. */
export type Finding = { readonly rows: readonly [first: number, last: number] } & (
  | {
      readonly code: 'long-floats';
      readonly role: 'main' | 'contrast';
      readonly yarn: number;
      readonly needles: Run;
      readonly longest: number;
      readonly longestMm: number;
      readonly count: number;
      /** Some of them run from one group to another, so that a ball for each would take them away. */
      readonly isBetweenGroups: boolean;
    }
  | {
      readonly code: 'lined-floats';
      readonly role: 'main' | 'contrast';
      readonly yarn: number;
      readonly needles: Run;
      readonly longest: number;
      readonly longestMm: number;
      readonly count: number;
    }
  | {
      readonly code: 'long-carry';
      readonly role: 'main' | 'contrast';
      readonly yarn: number;
      readonly needles: Run;
      readonly longest: number;
      readonly count: number;
    }
  | {
      readonly code: 'lined-carry';
      readonly role: 'main' | 'contrast';
      readonly yarn: number;
      readonly needles: Run;
      readonly longest: number;
      readonly count: number;
    }
  /**
   * Floats that stay over what their pattern wishes, since no stitch of them may
   * take an anchor: so many, and the longest of them.
   */
  | {
      readonly code: 'floats-unbroken';
      readonly pattern: PatternName;
      readonly wished: number;
      readonly needles: Run;
      readonly longest: number;
      readonly count: number;
    }
  /** So many strands are cut after the first of the rows and joined again on the last, `up` rows and `upMm` above it. */
  | {
      readonly code: 'long-way-up';
      readonly role: 'main' | 'contrast';
      readonly yarn: number;
      readonly up: number;
      readonly upMm: number;
      readonly count: number;
    }
  /** As asked for, so many strands are cut after the first of the rows and joined again on the last, up to `aside` stitches away. */
  | {
      readonly code: 'cut-aside';
      readonly role: 'main' | 'contrast';
      readonly yarn: number;
      readonly aside: number;
      readonly count: number;
    }
  | {
      readonly code: 'wider-than-bed';
      /** Neighbouring rows that leave the bed. */
      readonly spans: readonly (readonly [first: number, last: number])[];
      /** The widest of them, and its needles. */
      readonly row: number;
      readonly edges: Run;
      /** The needles that there are. */
      readonly bed: Run;
      readonly remedy: BedRemedy;
    }
  | {
      readonly code: 'many-yarns';
      readonly yarns: number;
      readonly count: number;
      /** Contrast stitches of all these rows, each of which could be laid by hand; null where no needle stands forward to lay them into. */
      readonly laid: number | null;
      readonly change: FewerYarns;
    }
  /** `canBeOff`: the machine has a switch for end-needle selection. */
  | { readonly code: 'contrast-to-edges'; readonly canBeOff: boolean }
  /** Blank rows of a pattern with end-needle selection on, `count` of them: `at`, from the lowest up. */
  | { readonly code: 'contrast-loose-across'; readonly count: number; readonly at: readonly number[] }
  /** An all-over pattern without end-needle selection. */
  | { readonly code: 'contrast-not-bound-in' }
  /** On `count` rows end needles knit contrast at an edge that no seam takes; `seam` would. */
  | { readonly code: 'end-needles-seen'; readonly edge: Side | 'both'; readonly count: number; readonly seam: Sewn }
  /** A pattern wants end-needle selection off on a machine that always has it on, or on where there is none. */
  | { readonly code: 'end-needles-always'; readonly isAllOver: boolean }
  | { readonly code: 'end-needles-none'; readonly isAllOver: boolean }
  | { readonly code: 'cut-copies'; readonly copies: number; readonly group: number }
  | { readonly code: 'copies-left-out'; readonly copies: number; readonly group: number }
  /** All-overs are counted from 0; `whole`: copies that are knitted whole. */
  | { readonly code: 'fill-cut'; readonly copies: number; readonly whole: number; readonly allOver: number }
  | { readonly code: 'fill-left-out'; readonly copies: number; readonly whole: number; readonly allOver: number }
  | { readonly code: 'figure-in-seam'; readonly side: Side; readonly stitches: number }
  /** A width differs by an odd number from the one below it, so one stitch is changed at one edge alone; the widths beside it reach both edges alike. */
  | {
      readonly code: 'odd-shaping';
      readonly at: OddDifference['at'];
      readonly edge: Side;
      readonly even: readonly number[];
    }
  /** A folded hem begins with other stitches than the needles that its loops are hung on. */
  | { readonly code: 'hem-loops'; readonly loops: number; readonly hungOn: number }
  | { readonly code: 'no-set-up-row' }
  /** The row that joins a hem is in pattern, or is shaped. */
  | { readonly code: 'pattern-on-joining-row' }
  | { readonly code: 'shaping-on-joining-row' }
  /** Stitches made (negative: cast off) at the edge away from the carriage, on the last row. */
  | { readonly code: 'shaping-away-from-carriage'; readonly edge: Side; readonly stitches: number }
  /** `count` rows of so many yarns, or of several balls, where no needle stands forward to lay them into. */
  | { readonly code: 'balls-unseen'; readonly count: number; readonly yarns: number }
  /**
   * `count` pattern rows at whose edges stitches are made or taken, where no needle can be pushed to put them right.
   * `seam` would take what is not right; null where that is more than a seam takes.
   */
  | { readonly code: 'edges-unseen'; readonly count: number; readonly seam: Sewn | null }
  /** Needles that are whole repeats of the machine apart and would be chosen differently. */
  | { readonly code: 'off-fixed-places'; readonly one: Slot; readonly other: Slot; readonly repeat: number }
  | { readonly code: 'infant-floats'; readonly count: number }
  | {
      readonly code: 'mirrored-lettering';
      readonly group: number;
      readonly motif: string;
      readonly isMirrored: boolean;
    }
  | {
      readonly code: 'mirrored-lettering-in-fill';
      readonly allOver: number;
      readonly motif: string;
      readonly isMirrored: boolean;
    }
  | { readonly code: 'faint-contrast'; readonly yarn: number; readonly ratio: number }
);

export type FindingCode = Finding['code'];

/** Findings that block: hands cannot knit the piece so, and it has no running order. */
export const BLOCKING_CODES: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'wider-than-bed',
  'hem-loops',
  'no-set-up-row',
  'pattern-on-joining-row',
  'shaping-on-joining-row',
  'shaping-away-from-carriage',
  'balls-unseen',
  'off-fixed-places',
]);

/** Findings that warn, those that block among them; the others are notes. */
export const WARNING_CODES: ReadonlySet<FindingCode> = new Set<FindingCode>([
  ...BLOCKING_CODES,
  'long-floats',
  'long-carry',
  'many-yarns',
  'contrast-to-edges',
  'contrast-loose-across',
  'contrast-not-bound-in',
  'end-needles-seen',
  'end-needles-always',
  'end-needles-none',
  'edges-unseen',
  'cut-copies',
  'figure-in-seam',
  'floats-unbroken',
  'infant-floats',
  'mirrored-lettering',
  'mirrored-lettering-in-fill',
  'faint-contrast',
]);

/** 2 for a finding that blocks, 1 for one that warns, 0 for a note. */
export function severityOf({ code }: Pick<Finding, 'code'>): 0 | 1 | 2 {
  if (BLOCKING_CODES.has(code)) return 2;
  return WARNING_CODES.has(code) ? 1 : 0;
}
