/**
 * The spaces of a row of groups, as they are judged.
 *
 * A row of n groups has n + 1 spaces: margin, gap, …, gap, margin. Judged
 * spaces are counted to the figures or to the pattern blocks, and the margins
 * net of the seam allowances. Whatever is judged, the blocks must lie on the
 * piece side by side, so every judged space has a least value: the blank
 * columns that lie in it, less, for a margin, the allowance (and so perhaps
 * below nought: a figure may be placed into the seam).
 *
 * That is all the solver needs to know of the groups: numbers that are each
 * at least `least[i]` and sum to `total`.
 */
import { widthOf, type Slot } from '../bed/index.ts';
import type { GroupOnNeedles, PlacementQuestion } from './types.ts';

export interface Frame {
  /** The least each judged space can be, left to right: margin, gaps, margin. */
  readonly least: readonly number[];
  /** What all judged spaces sum to. */
  readonly total: number;
}

/** The frame of a question with at least one group. */
export function frameOf(question: PlacementQuestion): Frame {
  const { edges, groups, seamAllowance, judge } = question;
  const least = new Array<number>(groups.length + 1).fill(0);
  let total = widthOf(edges) - seamAllowance.left - seamAllowance.right;
  groups.forEach((group, index) => {
    const [blankLeft, blankRight] = unseen(group, judge);
    least[index] = (least[index] as number) + blankLeft;
    least[index + 1] = (least[index + 1] as number) + blankRight;
    total -= group.width - blankLeft - blankRight;
  });
  least[0] = (least[0] as number) - seamAllowance.left;
  least[groups.length] = (least[groups.length] as number) - seamAllowance.right;
  return { least, total };
}

/** The blank columns that count as space: all of them by the figure, none by the blocks. */
function unseen(group: GroupOnNeedles, judge: PlacementQuestion['judge']): readonly [left: number, right: number] {
  return judge === 'figure' ? [group.blankLeft, group.blankRight] : [0, 0];
}

/** The first needle of every group when the judged spaces are `spaces`. */
export function firstNeedles(question: PlacementQuestion, frame: Frame, spaces: readonly number[]): Slot[] {
  let next: number = question.edges.first;
  return question.groups.map((group, index) => {
    // What a space has beyond its least is plain needles between blocks, or between a block and the edge.
    const first = next + (spaces[index] as number) - (frame.least[index] as number);
    next = first + group.width;
    return first as Slot;
  });
}
