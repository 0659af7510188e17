/** Long floats or carries one above the other, gathered into one. */
import type { Run, Slot } from '../bed/index.ts';

export interface StackItem extends Run {
  readonly row: number;
  /** The row on which a neighbour above would stand. */
  readonly next: number;
  /** The last row it reaches. */
  readonly lastRow: number;
  readonly stitches: number;
  readonly mm: number;
  /** Its ends lie in two groups, so that a ball for each would take it away. */
  readonly isBetweenGroups: boolean;
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

/** Gathers items, given by ascending row, that stand on neighbouring rows and share a needle. */
export function stack(items: Iterable<StackItem>): Stack[] {
  const stacks: Growing[] = [];
  let below: { readonly item: StackItem; readonly stack: Growing }[] = [];
  let row = 0;
  for (const item of items) {
    if (item.row !== row) {
      row = item.row;
      below = below.filter((candidate) => candidate.item.next >= row);
    }
    let mine: Growing | null = null;
    for (const candidate of below) {
      const touches =
        candidate.item.next === row && candidate.item.first <= item.last && item.first <= candidate.item.last;
      if (touches) mine = join(mine, rootOf(candidate.stack));
    }
    if (mine) {
      grow(mine, item);
    } else {
      // Field by field: objects that are spread together are slow to grow, and there may be thousands.
      const { first, last, lastRow, stitches: longest, mm: longestMm, isBetweenGroups } = item;
      mine = { firstRow: row, lastRow, first, last, longest, longestMm, count: 1, isBetweenGroups, into: null };
      stacks.push(mine);
    }
    below.push({ item, stack: mine });
  }
  return stacks
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

function grow(mine: Growing, { first, last, lastRow, stitches, mm, isBetweenGroups }: StackItem): void {
  mine.lastRow = Math.max(mine.lastRow, lastRow);
  mine.first = Math.min(mine.first, first);
  mine.last = Math.max(mine.last, last);
  mine.longest = Math.max(mine.longest, stitches);
  mine.longestMm = Math.max(mine.longestMm, mm);
  mine.count++;
  mine.isBetweenGroups ||= isBetweenGroups;
}
