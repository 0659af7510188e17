/** The patterns as the machine is set for them: one at a time, so patterns that share rows are set together. */
import { widthOf, type Slot } from '../../bed/index.ts';
import {
  tierOf,
  type PlacedAllOver,
  type PlacedCopies,
  type PlacedGroup,
  type PlacedPattern,
} from '../../fabric/index.ts';
import { allOversOf, bandsOf, copiesOf } from '../../pattern/index.ts';
import { edgesAt, type Outline } from '../../piece/index.ts';
import { modulo } from '../../grid/index.ts';
import { figureRuns } from '../figure.ts';
import type { Plan, PlanRow } from '../types.ts';
import type { FirstNeedles } from './types.ts';

export interface Program {
  /** The patterns that are set together. */
  readonly parts: readonly PlacedPattern[];
  readonly firstRow: number;
  readonly lastRow: number;
  readonly groups: readonly FirstNeedles[];
}

/** From the bottom up. */
export function programsOf({ patterns, outline }: Plan): Program[] {
  const together: PlacedPattern[][] = [];
  let lastRow = 0;
  for (const pattern of patterns.toSorted((a, b) => a.firstRow - b.firstRow)) {
    const shares = together.at(-1);
    if (shares && pattern.firstRow <= lastRow) shares.push(pattern);
    else together.push([pattern]);
    lastRow = Math.max(lastRow, pattern.lastRow);
  }
  return together.map((sharing) => {
    const parts = patterns.filter((pattern) => sharing.includes(pattern));
    return {
      parts,
      firstRow: Math.min(...parts.map((pattern) => pattern.firstRow)),
      lastRow: Math.max(...parts.map((pattern) => pattern.lastRow)),
      groups: parts.flatMap((pattern) => copiesOf(pattern).map((copies) => needlesOf(copies, outline))),
    };
  });
}

/** The whole copies on the first row; where there is none, the copy that the row begins in. */
function needlesOf({ motif, copy, isMirrored, firstRow, origin, block }: PlacedCopies, outline: Outline): FirstNeedles {
  const { first, last } = block ?? edgesAt(outline, firstRow);
  const into = modulo(first - origin, copy.width);
  const whole = into === 0 ? first : first - into + copy.width;
  const fitting = Math.floor((last - whole + 1) / copy.width);
  const needle = fitting > 0 ? whole : first - into;
  const copies = Math.max(fitting, 1);
  return { needle: needle as Slot, last: (needle + copies * copy.width - 1) as Slot, motif, copies, isMirrored };
}

/** Where needles whole repeats of a machine apart would be chosen differently on a row. */
export interface Clash {
  readonly row: number;
  readonly one: Slot;
  readonly other: Slot;
}

/**
 * The lowest row of a program on which a machine that chooses every `repeat`
 * needles alike cannot choose as the pattern asks, or null. It chooses from the
 * first needle of the leftmost group to the last of the rightmost, and beside
 * them as far as there are anchors, so all others there have to stay back;
 * needles further out are not asked about. An all-over reaches over all needles.
 */
export function clashOnPlaces(plan: Plan, { parts, firstRow, lastRow }: Program, repeat: number): Clash | null {
  const groups = bandsOf({ patterns: parts }).flatMap((band) => band.groups);
  const allOvers = allOversOf({ patterns: parts });
  const anchored = plan.rows.slice(firstRow - 1, lastRow).flatMap(({ anchors }) => anchors);
  // An all-over fills what is between the groups, and asks about it itself.
  const between = allOvers.length > 0 ? [] : needlesBetween(groups, anchored);
  for (let row = firstRow; row <= lastRow; row++) {
    /** By place in the repeat: the needle that asked first, and what for. */
    const asked = new Map<number, { readonly needle: number; readonly isChosen: boolean }>();
    const ask = (needle: number, isChosen: boolean): Clash | null => {
      const before = asked.get(modulo(needle, repeat));
      if (before && before.isChosen !== isChosen) {
        return { row, one: before.needle as Slot, other: needle as Slot };
      }
      if (!before) asked.set(modulo(needle, repeat), { needle, isChosen });
      return null;
    };
    const { anchors: anchorsOfRow, contrast } = plan.rows[row - 1] as PlanRow;
    const anchors = new Set<number>(anchorsOfRow);
    const isContrast = (needle: number): boolean =>
      contrast.some(({ first, last }) => needle >= first && needle <= last);
    for (const group of groups) {
      for (let at = 0; at < widthOf(group.block); at++) {
        const needle = group.block.first + at;
        const clash = ask(needle, anchors.has(needle) ? isContrast(needle) : isFigureOfGroup(group, row, at));
        if (clash) return clash;
      }
    }
    for (const needle of between) {
      const clash = ask(needle, anchors.has(needle));
      if (clash) return clash;
    }
    for (const allOver of allOvers) {
      if (row < allOver.firstRow || row > allOver.lastRow) continue;
      if (!isEverywhere(allOver) || anchors.size > 0) {
        const clash = askInRow(plan.rows[row - 1] as PlanRow, ask);
        if (clash) return clash;
        continue;
      }
      const { copyRow, origin } = tierOf(allOver, row);
      const { width, cells } = allOver.copy;
      // After so many needles copies and repeats begin together again.
      for (let at = 0; at < width * repeat; at++) {
        const clash = ask(origin + at, cells[copyRow * width + (at % width)] !== allOver.ground);
        if (clash) return clash;
      }
    }
  }
  return null;
}

/** The needles between groups, and beside them as far as there are anchors, from left to right. */
function needlesBetween(groups: readonly PlacedGroup[], anchors: readonly Slot[]): number[] {
  const blocks = groups.map(({ block }) => block).sort((a, b) => a.first - b.first);
  const needles: number[] = [];
  let next = anchors.reduce((first, needle) => Math.min(first, needle), blocks[0]?.first ?? 0);
  const end = anchors.reduce((last, needle) => Math.max(last, needle), -Infinity);
  for (const { first, last } of blocks) {
    for (let needle = next; needle < first; needle++) needles.push(needle);
    next = Math.max(next, last + 1);
  }
  for (let needle = next; needle <= end; needle++) needles.push(needle);
  return needles;
}

/** Whether the copies of an all-over reach over all needles: none are left out, and no border is kept plain. */
function isEverywhere({ border, without }: PlacedAllOver): boolean {
  return border.left === 0 && border.right === 0 && without.size === 0;
}

function askInRow(row: PlanRow, ask: (needle: number, isChosen: boolean) => Clash | null): Clash | null {
  const figure = figureRuns(row);
  for (let needle: number = row.edges.first; needle <= row.edges.last; needle++) {
    const clash = ask(
      needle,
      figure.some(({ first, last }) => needle >= first && needle <= last),
    );
    if (clash) return clash;
  }
  return null;
}

function isFigureOfGroup(group: PlacedGroup, row: number, at: number): boolean {
  if (row < group.firstRow || row > group.lastRow) return false;
  const { copy, ground, without } = group;
  const { tier, copyRow } = tierOf(group, row);
  if (without.get(tier)?.has(Math.floor(at / copy.width))) return false;
  return copy.cells[copyRow * copy.width + (at % copy.width)] !== ground;
}
