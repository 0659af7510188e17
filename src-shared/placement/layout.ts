/** Groups laid on the needles, and the spaces around them counted both ways. */
import type { Run, Slot } from '../bed/index.ts';
import type { FirstNeedles, GroupPlace, PlacementQuestion, Spaces } from './types.ts';

export interface Layout {
  readonly groups: readonly GroupPlace[];
  readonly blocks: Spaces;
  readonly figure: Spaces;
  /** The spaces as judged, left to right, the margins net of the seam allowances. */
  readonly judged: readonly number[];
}

/** Spaces with what the seam takes left off the margins, which may come out below nought. */
export function clearOf({ margins, gaps }: Spaces, { left, right }: PlacementQuestion['seamAllowance']): Spaces {
  return { margins: [margins[0] - left, margins[1] - right], gaps };
}

/** Lays each group from its first needle on. */
export function layOut(question: PlacementQuestion, first: FirstNeedles): Layout {
  const { edges, seamAllowance, judge } = question;
  const groups = question.groups.map(({ width, blankLeft, blankRight }, index): GroupPlace => {
    const start = first[index] as number;
    const end = start + width - 1;
    return { block: run(start, end), figure: run(start + blankLeft, end - blankRight) };
  });
  const blocks = spacesAround(
    edges,
    groups.map(({ block }) => block),
  );
  const figure = spacesAround(
    edges,
    groups.map(({ figure }) => figure),
  );
  const { margins, gaps } = clearOf(judge === 'figure' ? figure : blocks, seamAllowance);
  return {
    groups,
    blocks,
    figure,
    judged: [margins[0], ...gaps, margins[1]],
  };
}

function run(first: number, last: number): Run {
  return { first: first as Slot, last: last as Slot };
}

/** Needles between neighbouring runs, and from the outermost ones to the edges of the piece. */
function spacesAround(edges: Run, runs: readonly Run[]): Spaces {
  const leftmost = runs[0] as Run;
  const rightmost = runs[runs.length - 1] as Run;
  const gaps = runs.slice(1).map((next, index) => next.first - (runs[index] as Run).last - 1);
  return { margins: [leftmost.first - edges.first, edges.last - rightmost.last], gaps };
}
