/** Fills: where their copies lie, how they meet in the seam, and what is asked about them. */
import { label, type Slot } from '../../bed/index.ts';
import { numbers as n } from './numbers.ts';

/** More needles than this are said by the first and last of them. */
const MOST_NAMED = 8;

/** `L49, L35 and R12`, or `every 6 needles from L49 to R48`. */
function needles(first: readonly Slot[], width: number): string {
  const [leftmost, rightmost] = [first[0], first.at(-1)];
  return first.length <= MOST_NAMED || leftmost === undefined || rightmost === undefined
    ? n.list(first.map(label))
    : `every ${n.needles(width)} from ${label(leftmost)} to ${label(rightmost)}`;
}

/** ` Each copy is moved 7 needles to the right of the one below it.`, or nothing. */
function stepped(step: number, width: number): string {
  const right = ((step % width) + width) % width;
  if (right === 0) return '';
  const isLeft = right * 2 > width;
  return ` Each copy is moved ${n.needles(isLeft ? width - right : right)} to the ${isLeft ? 'left' : 'right'} of the one below it.`;
}

export const fill = {
  needles,
  stepped,
  /** The fill on the needles, in a sentence or two. */
  lies(facts: {
    readonly index: number;
    readonly firstRow: number;
    readonly lastRow: number;
    readonly first: readonly Slot[];
    readonly width: number;
    readonly step: number;
  }): string {
    const { index, firstRow, lastRow, first, width, step } = facts;
    const start =
      first.length === 0
        ? `no copy starts on row ${firstRow}`
        : `on row ${firstRow} copies of ${n.stitches(width)} start at ${needles(first, width)}`;
    return `Fill ${index + 1}, ${n.rowSpan(firstRow, lastRow)}: ${start}.${stepped(step, width)}`;
  },
};
