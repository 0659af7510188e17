/** What is read out of a group while it moves: its needles and rows, the spaces, and what they line up with. */
import type { Run, Slot } from '@shared/bed/index.ts';
import type { PlacedBand, PlacedGroup } from '@shared/fabric/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { edgesAt, isStraight } from '@shared/piece/index.ts';
import { solvePlacement, type GroupPlace, type PlacementChoice } from '@shared/placement/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { Standing } from './standing.ts';

/** What stands in line. Spaces are margin, gap, …, gap, margin, counted from 0. */
export type Guide =
  /** The group is in the middle of what is left of the piece by the seam. */
  | { readonly kind: 'centre'; readonly column: number }
  /** Spaces that are as wide as one beside the group, the margins net of the seam. */
  | { readonly kind: 'equal'; readonly spaces: readonly number[]; readonly stitches: number }
  /** The gap beside the group is as wide as the one across the seam. */
  | { readonly kind: 'seam'; readonly stitches: number }
  /** An edge of the group is in line with one of another band: between `column` and the one before it. */
  | { readonly kind: 'line'; readonly column: number }
  /** As many rows below as above. */
  | { readonly kind: 'rows'; readonly row: number };

export interface Reading {
  readonly band: number;
  /** Which of the band's groups is moved, from 0. */
  readonly group: number;
  /** Its number among all groups of the piece, from 0. */
  readonly number: number;
  /** The band as it would stand, with that as its only choice. */
  readonly placed: PlacedBand;
  /** Its groups as they would stand. */
  readonly groups: readonly PlacedGroup[];
  /** Margin, gap, …, gap, margin, as judged, from left to right at the machine. */
  readonly spaces: readonly number[];
  /** Other rows of the piece are wider or narrower, so that the margins are those of the band's first row alone. */
  readonly isShaped: boolean;
  readonly acrossSeam: number;
  readonly guides: readonly Guide[];
}

/** Reads a place where the groups of a band can stand (see `whatStops`). Throws `RangeError` for a band without groups. */
export function readingOf(plan: Plan, band: number, group: number, standing: Standing): Reading {
  const before = bandsOf(plan)[band];
  const edges = edgesAt(plan.outline, standing.firstRow);
  const rule = { kind: 'by-hand', first: standing.first } as const;
  const question = before && { ...before.question, edges, rule };
  const choice = question && solvePlacement(question, 1)[0];
  if (!choice) throw new RangeError(`Band ${band} has no groups that could move`);
  const groups = before.groups.map((one, index) => {
    const place = choice.groups[index] as GroupPlace;
    const firstRow = standing.firstRow + (standing.rises[index] as number);
    const lastRow = firstRow + one.lastRow - one.firstRow;
    return { ...one, ...place, origin: place.block.first, firstRow, lastRow };
  });
  const lastRow = Math.max(...groups.map((one) => one.lastRow));
  const { margins, gaps } = question.judge === 'figure' ? choice.figure : choice.blocks;
  return {
    band,
    group,
    number: plan.groups.findIndex((one) => one.band === band) + group,
    placed: { ...before, question, choices: [choice], taken: 0, groups, firstRow: standing.firstRow, lastRow },
    groups,
    spaces: [margins[0], ...gaps, margins[1]],
    isShaped: !isStraight(plan.outline),
    acrossSeam: choice.acrossSeam,
    guides: [
      ...acrossGuides(choice, group, question),
      ...linesWith(
        judgedRun(choice, group, question.judge),
        plan.groups.filter((one) => one.band !== band),
        question.judge,
      ),
      ...rowGuides(standing.firstRow, lastRow, plan.outline.rows),
    ],
  };
}

/** The plan with the band that is in the hand as it would stand: what is said of where groups are follows it. */
export function asDragged(plan: Plan, reading: Reading | null): Plan {
  if (!reading) return plan;
  const { placed } = reading;
  const isHeld = ({ kind, number }: Plan['patterns'][number]): boolean => kind === 'band' && number === placed.number;
  return { ...plan, patterns: plan.patterns.map((pattern) => (isHeld(pattern) ? placed : pattern)) };
}

/** Where the judged spaces start and end, by the spaces' number. */
export function spaceRun({ placed }: Reading, space: number): Run {
  const choice = placed.choices[0] as PlacementChoice;
  const { edges, judge } = placed.question;
  const before = space === 0 ? edges.first - 1 : judgedRun(choice, space - 1, judge).last;
  const after = space === choice.groups.length ? edges.last + 1 : judgedRun(choice, space, judge).first;
  return { first: (before + 1) as Slot, last: (after - 1) as Slot };
}

function acrossGuides(choice: PlacementChoice, group: number, question: PlacedBand['question']): Guide[] {
  const { edges, seamAllowance, judge } = question;
  const { margins, gaps } = judge === 'figure' ? choice.figure : choice.blocks;
  const net = [margins[0] - seamAllowance.left, ...gaps, margins[1] - seamAllowance.right];
  const left = edges.first + seamAllowance.left;
  const right = edges.last - seamAllowance.right;
  const guides: Guide[] = [];
  const { first, last } = judgedRun(choice, group, judge);
  if (first - left === right - last) guides.push({ kind: 'centre', column: (left + right + 1) / 2 });
  for (const beside of [group, group + 1]) {
    const stitches = net[beside] as number;
    const spaces = net.flatMap((space, index) => (space === stitches ? [index] : []));
    const isMarked = guides.some((guide) => guide.kind === 'equal' && guide.stitches === stitches);
    if (spaces.length > 1 && !isMarked) guides.push({ kind: 'equal', spaces, stitches });
  }
  const besideGaps = [gaps[group - 1], gaps[group]];
  if (besideGaps.includes(choice.acrossSeam)) guides.push({ kind: 'seam', stitches: choice.acrossSeam });
  return guides;
}

function linesWith(moved: Run, others: readonly PlacedGroup[], judge: 'figure' | 'blocks'): Guide[] {
  const columns = new Set(
    others.map((other) => other[runName(judge)]).flatMap(({ first, last }) => [first as number, last + 1]),
  );
  return [moved.first as number, moved.last + 1]
    .filter((column) => columns.has(column))
    .map((column) => ({ kind: 'line', column }));
}

function rowGuides(firstRow: number, lastRow: number, rows: number): Guide[] {
  return firstRow - 1 === rows - lastRow ? [{ kind: 'rows', row: rows / 2 }] : [];
}

function judgedRun(choice: PlacementChoice, group: number, judge: 'figure' | 'blocks'): Run {
  return (choice.groups[group] as GroupPlace)[runName(judge)];
}

function runName(judge: 'figure' | 'blocks'): 'figure' | 'block' {
  return judge === 'figure' ? 'figure' : 'block';
}
