/** All-overs: where their copies lie, how they meet in the seam, and what is asked about them. */
import { label, type Side, type Slot } from '../../bed/index.ts';
import type { Clipping, SeamMatching, SeamMeeting, SeamRun } from '../../fabric/index.ts';
import { modulo } from '../../grid/index.ts';
import type { AllOver, PatternName } from '../../pattern/index.ts';
import type { End, Start } from '../../piece/index.ts';
import { capitalised } from '../marked.ts';
import { numbers as n } from './numbers.ts';
import { patterns } from './patterns.ts';

/** More needles than this are said by the first and last of them. */
const MOST_NAMED = 8;

/** `at L49, L35 and R12`, or `every 6 needles from L49 to R48`. */
function needles(first: readonly Slot[], width: number): string {
  const [leftmost, rightmost] = [first[0], first.at(-1)];
  return first.length <= MOST_NAMED || leftmost === undefined || rightmost === undefined
    ? `at ${n.list(first.map(label))}`
    : `every ${n.needles(width)} from ${label(leftmost)} to ${label(rightmost)}`;
}

/** ` Each copy is moved 7 needles to the right of the one below it.`, or nothing. */
function stepped(step: number, width: number): string {
  const right = modulo(step, width);
  if (right === 0) return '';
  const isLeft = right * 2 > width;
  return ` Each copy is moved ${n.needles(isLeft ? width - right : right)} to the ${isLeft ? 'left' : 'right'} of the one below it.`;
}

/** `matches`, `2 stitches too many`. */
function meeting(met: SeamMeeting): string {
  switch (met.kind) {
    case 'continues':
      return 'matches';
    case 'mirrors':
      return 'a mirror image in the seam';
    case 'off':
      return met.by > 0 ? `${n.stitches(met.by)} too many` : `${n.stitches(-met.by)} too few`;
    case 'plain':
      return `${n.count(met.stitches, 'plain stitch', 'plain stitches')} along the seam`;
  }
}

/** More stretches of rows than this are told by the first and last row of them all. */
const MOST_STRETCHES = 4;

/** `rows 12–15 and 20`, `between rows 3 and 120`: where it meets so; rows of one yarn go with those around them. */
function rowsMeeting({ runs }: SeamMatching, kind: SeamMeeting['kind']): string {
  const stretches: { first: number; last: number }[] = [];
  for (const { first, last, meeting: met } of runs) {
    if (met.kind !== kind) continue;
    const before = stretches.at(-1);
    if (before && before.last + 1 === first) before.last = last;
    else stretches.push({ first, last });
  }
  const [lowest, highest] = [stretches[0], stretches.at(-1)];
  if (lowest && highest && stretches.length > MOST_STRETCHES) {
    return `between rows ${lowest.first} and ${highest.last}`;
  }
  return n.rowRuns(stretches.map(({ first, last }) => ({ first: first - 1, last: last - 1 })));
}

/** How an all-over meets in the closed seam, in a sentence or two. Strong numbers are marked. */
function summary(seam: SeamMatching): string {
  const { rows, matching, mirrored, off, plain, uniform } = seam;
  if (plain === rows.length) return 'Its edges are plain, so nothing has to match in the seam.';
  const patterned = matching + mirrored + off;
  const ends = plain === 0 ? '' : ` On **${n.rows(plain)}** it ends before the seam.`;
  if (patterned === 0) return `Each row is of one yarn, so it matches wherever it is cut.${ends}`;
  // Rows of one yarn show no seam: they are neither counted nor told.
  const isWhole = uniform + plain === 0;
  const every = isWhole ? `all **${n.rows(patterned)}**` : `all **${patterned}** rows that show it`;
  if (matching === patterned) return `It matches across the seam on ${every}.${ends}`;
  const on = (count: number, kind: SeamMeeting['kind']): string =>
    count === patterned ? every : `**${count}** (${rowsMeeting(seam, kind)})`;
  const broken = [
    off === 0 ? '' : `off on ${on(off, 'off')}`,
    mirrored === 0 ? '' : `a mirror image on ${on(mirrored, 'mirrors')}`,
  ].filter((part) => part !== '');
  const head =
    matching === 0
      ? 'It does not match across the seam'
      : `It matches across the seam on **${matching}** of ${n.rows(patterned)}${isWhole ? '' : ' that show it'}`;
  return `${head}: ${broken.join(', ')}.${ends}`;
}

export const allOver = {
  title: 'All-over pattern',
  more: 'Rows, edges, how it lies',
  /** `2: rows 41–80`; its number alone while something is in its way. */
  number: (index: number, placed: { readonly firstRow: number; readonly lastRow: number } | undefined): string =>
    placed ? `${index + 1}: ${n.rowSpan(placed.firstRow, placed.lastRow)}` : `${index + 1}`,
  which: 'All-over',
  added: (firstRow: number, lastRow: number): string => `The all-over takes ${n.rowSpan(firstRow, lastRow)}.`,
  /** What went for it, and which rows it takes. */
  replaced: (gone: readonly PatternName[], firstRow: number, lastRow: number): string =>
    `The all-over takes ${n.rowSpan(firstRow, lastRow)}; ${patterns.list(gone)} ${gone.length === 1 ? 'is' : 'are'} gone.`,
  removed: 'Removed.',

  form: {
    motif: 'Motif of the all-over',
    starts: 'All-over starts',
    startKinds: {
      'from-edge': 'at a lower edge',
      'above-hem': 'above the hem',
      'from-row': 'on a given row',
    } satisfies { readonly [Kind in Start['kind']]: string },
    lowerEdge: 'Lower edge of',
    rowsBelow: 'Plain rows below the all-over',
    firstRow: 'First row of the all-over',
    ends: 'All-over ends',
    endKinds: {
      'from-edge': 'at an upper edge',
      'to-row': 'on a given row',
      'so-high': 'after so many rows',
    } satisfies { readonly [Kind in End['kind'] | 'so-high']: string },
    upperEdge: 'Upper edge of',
    rowsAbove: 'Plain rows above the all-over',
    lastRow: 'Last row of the all-over',
    rows: 'Rows of the all-over',
    /** Of one that is so many rows high. */
    position: 'Position of the all-over',
    rowsBeside: 'Plain rows beside the all-over',
    centre: 'Centred on',
    centres: { column: 'the middle of a copy', between: 'the line between two' } satisfies {
      readonly [Centre in AllOver['centre']]: string;
    },
    shift: 'Moved from there by',
    shiftHint: 'to the right on the needles; negative to the left',
    step: 'Step each row of copies by',
    stepHint: (width: number): string =>
      width % 2 === 0 ? `0 for straight up, ${width / 2} for a brick` : '0 for straight up',
    border: (side: Side): string => `Kept plain, ${side} edge`,
    cutCopies: 'Copies cut by an edge',
  },

  /** Where what was to stand in the middle cannot stand exactly there. */
  halfOff({ centre, shift }: Pick<AllOver, 'centre' | 'shift'>): string {
    const before = shift === 0 ? 'The' : 'Before it is moved, the';
    return centre === 'column'
      ? `${before} middle of a copy stands half a stitch to the left of the middle of its first row, as one of them is odd and the other even.`
      : `${before} line between two copies stands half a stitch to the left of the middle of its first row, which is odd.`;
  },
  counts({ whole, clipped, leftOut }: Pick<Clipping, 'whole' | 'clipped' | 'leftOut'>): string {
    const parts = [
      `**${n.copies(whole)}** whole`,
      clipped.length > 0 ? `${clipped.length} cut` : '',
      leftOut.length > 0 ? `${leftOut.length} left out` : '',
    ];
    return `${n.list(parts.filter((part) => part !== ''))}.`;
  },

  seam: {
    summary,
    /** `Rows 41–44: 2 stitches too many`. */
    run({ first, last, meeting: met }: SeamRun): string {
      return `${capitalised(n.rowSpan(first, last))}: ${meeting(met)}`;
    },
    runs: 'Row by row',
    more: (left: number): string => `${left} more`,
    fewer: 'Show fewer',
    fits: 'Every row would match with:',
    noFit: 'No stitch count near this one makes every row match.',
    noFitShaped: 'Shaping adds stitches on the way up, so no stitch count makes every row match.',
    looking: 'Looking for what would make every row match …',
    /** What a button says that takes the stitch count; `stitches` at the cast-on. */
    width: (by: number, stitches: number): string =>
      `${n.stitches(Math.abs(by))} ${by > 0 ? 'more' : 'fewer'}, ${stitches} at the cast-on`,
    taken: 'Every row matches across the seam now.',
  },

  needles,
  stepped,
  /** The all-over on the needles, in a sentence or two. */
  lies(facts: {
    readonly number: number;
    readonly firstRow: number;
    readonly lastRow: number;
    readonly first: readonly Slot[];
    readonly copy: { readonly width: number };
    readonly step: number;
  }): string {
    const { number, firstRow, lastRow, first, copy, step } = facts;
    const { width } = copy;
    const start =
      first.length === 0
        ? `no copy starts on row ${firstRow}`
        : `on row ${firstRow} copies of ${n.stitches(width)} start ${needles(first, width)}`;
    return `All-over ${number + 1}, ${n.rowSpan(firstRow, lastRow)}: ${start}.${stepped(step, width)}`;
  },
};
