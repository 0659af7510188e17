/** Long floats or carries one above the other, gathered into one. */
import type { Run, Slot } from '../bed/index.ts';

/** What is gathered: a float or a carry. */
export interface Strand extends Run {
  readonly stitches: number;
  readonly mm: number;
}

/** Where one stands. */
export interface StrandRows {
  readonly row: number;
  /** The row on which a neighbour above would stand. */
  readonly next: number;
  /** The last row it reaches. */
  readonly lastRow: number;
}

export interface Stack {
  readonly rows: readonly [first: number, last: number];
  readonly needles: Run;
  /** In stitches. */
  readonly longest: number;
  /** Not always that of the most stitches: they may lie on rows of another gauge. */
  readonly longestMm: number;
  /** How many were gathered. */
  readonly count: number;
  /** Some of them lie between two groups. */
  readonly isBetweenGroups: boolean;
}

interface Growing {
  firstRow: number;
  lastRow: number;
  first: number;
  last: number;
  longest: number;
  longestMm: number;
  count: number;
  isBetweenGroups: boolean;
  /** The stack this one was joined to. */
  into: Growing | null;
}

/** Gathers strands, given by ascending row, that stand on neighbouring rows and share a needle. */
export class Stacks {
  private readonly stacks: Growing[] = [];
  /** What neighbours above would stand on, by the row they would stand on. */
  private readonly open = new Map<number, Level>();

  /** `isBetweenGroups`: its ends lie in two groups, so that a ball for each would take it away. */
  add({ row, next, lastRow }: StrandRows, strand: Strand, isBetweenGroups: boolean): void {
    const below = this.open.get(row);
    let mine = below ? joined(below, strand) : null;
    const { first, last, stitches, mm } = strand;
    if (mine) {
      grow(mine, strand, lastRow, isBetweenGroups);
    } else {
      mine = {
        firstRow: row,
        lastRow,
        first,
        last,
        longest: stitches,
        longestMm: mm,
        count: 1,
        isBetweenGroups,
        into: null,
      };
      this.stacks.push(mine);
    }
    let level = this.open.get(next);
    if (!level) {
      // Rows ascend, so what waited for those below this one waits in vain.
      this.open.delete(row - 1);
      level = { strands: [], stacks: [], isInOrder: true, passed: 0 };
      this.open.set(next, level);
    }
    const before = level.strands.at(-1);
    if (before && (before.first > first || before.last > last)) level.isInOrder = false;
    level.strands.push(strand);
    level.stacks.push(mine);
  }

  /** All that was gathered, in the order in which it began. */
  gathered(): Stack[] {
    return this.stacks
      .filter(({ into }) => into === null)
      .map(({ firstRow, lastRow, first, last, longest, longestMm, count, isBetweenGroups }) => ({
        rows: [firstRow, lastRow],
        needles: { first: first as Slot, last: last as Slot },
        longest,
        longestMm,
        count,
        isBetweenGroups,
      }));
  }
}

/** Strands on which neighbours of one row would stand, and the stacks they are in. */
interface Level {
  readonly strands: Strand[];
  readonly stacks: Growing[];
  /** None begins or ends left of the one before it, as floats of one strand do not. */
  isInOrder: boolean;
  /** So many of those in order end left of where the last strand above began. */
  passed: number;
}

/** The stack of all that a strand touches below it; null where that is nothing. */
function joined(below: Level, { first, last }: Strand): Growing | null {
  const { strands, stacks, isInOrder } = below;
  let mine: Growing | null = null;
  let at = 0;
  if (isInOrder) {
    // The strands above mostly come from left to right as well: go on from where the last one began.
    at = below.passed;
    while (at > 0 && (strands[at - 1] as Strand).last >= first) at--;
    while (at < strands.length && (strands[at] as Strand).last < first) at++;
    below.passed = at;
  }
  for (; at < strands.length; at++) {
    const other = strands[at] as Strand;
    if (other.first <= last && first <= other.last) mine = join(mine, rootOf(stacks[at] as Growing));
    else if (isInOrder) break;
  }
  return mine;
}

function rootOf(growing: Growing): Growing {
  let root = growing;
  while (root.into) root = root.into;
  return root;
}

function join(mine: Growing | null, other: Growing): Growing {
  if (mine === null || mine === other) return other;
  other.into = mine;
  mine.firstRow = Math.min(mine.firstRow, other.firstRow);
  mine.lastRow = Math.max(mine.lastRow, other.lastRow);
  mine.first = Math.min(mine.first, other.first);
  mine.last = Math.max(mine.last, other.last);
  mine.longest = Math.max(mine.longest, other.longest);
  mine.longestMm = Math.max(mine.longestMm, other.longestMm);
  mine.count += other.count;
  mine.isBetweenGroups ||= other.isBetweenGroups;
  return mine;
}

function grow(mine: Growing, strand: Strand, lastRow: number, isBetweenGroups: boolean): void {
  const { first, last, stitches, mm } = strand;
  mine.lastRow = Math.max(mine.lastRow, lastRow);
  mine.first = Math.min(mine.first, first);
  mine.last = Math.max(mine.last, last);
  mine.longest = Math.max(mine.longest, stitches);
  mine.longestMm = Math.max(mine.longestMm, mm);
  mine.count++;
  mine.isBetweenGroups ||= isBetweenGroups;
}
