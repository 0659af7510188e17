/** An all-over in the JSON of `plan`. */
import { label } from '@shared/bed/index.ts';
import {
  firstNeedlesOf,
  seamMatchingOf,
  type PlacedAllOver,
  type SeamMatching,
  type SeamMeeting,
} from '@shared/fabric/index.ts';
import type { Outline } from '@shared/piece/index.ts';

export interface AllOverJson {
  readonly firstRow: number;
  readonly lastRow: number;
  /** Where copies start on the first row. */
  readonly first: readonly string[];
  /** Stitches and rows of a copy. */
  readonly copy: readonly [stitches: number, rows: number];
  /** Stitches to the right by which each copy is moved against the one below it. */
  readonly step: number;
  readonly copies: { readonly whole: number; readonly cut: number; readonly leftOut: number };
  /** How the edges meet in the closed seam. */
  readonly seam: SeamJson;
}

export interface SeamJson {
  /** Rows that show the pattern and match; that are a mirror image in the seam; that are off. */
  readonly matching: number;
  readonly mirrored: number;
  readonly off: number;
  /** Rows on which the pattern ends before the seam. */
  readonly plain: number;
  /** Rows of one yarn, which show nothing of a seam. */
  readonly uniform: number;
  /** From the lowest row up; rows of one yarn go with those around them. */
  readonly rows: readonly {
    readonly first: number;
    readonly last: number;
    readonly meets: 'matching' | 'mirrored' | 'off' | 'plain';
    /** Where off: too many, negative for too few. Where plain: the plain stitches along the seam. Else 0. */
    readonly stitches: number;
  }[];
}

const MEETS = { continues: 'matching', mirrors: 'mirrored', off: 'off', plain: 'plain' } as const;

export function allOverJson(placed: PlacedAllOver, outline: Outline): AllOverJson {
  const { firstRow, lastRow, copy, step, whole, clipped, leftOut } = placed;
  return {
    firstRow,
    lastRow,
    first: firstNeedlesOf(placed, outline).map(label),
    copy: [copy.width, copy.height],
    step,
    copies: { whole, cut: clipped.length, leftOut: leftOut.length },
    seam: seamJson(seamMatchingOf(placed, outline)),
  };
}

function seamJson({ matching, mirrored, off, plain, uniform, runs }: SeamMatching): SeamJson {
  const rows = runs.map(({ first, last, meeting }) => {
    return { first, last, meets: MEETS[meeting.kind], stitches: stitchesOf(meeting) };
  });
  return { matching, mirrored, off, plain, uniform, rows };
}

function stitchesOf(meeting: SeamMeeting): number {
  return meeting.kind === 'off' ? meeting.by : meeting.kind === 'plain' ? meeting.stitches : 0;
}
