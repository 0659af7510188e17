/** The patterns as the machine is set for them: one at a time, so patterns that share rows are set together. */
import { widthOf, type Slot } from '../../bed/index.ts';
import { tierOf, type PlacedFill, type PlacedGroup } from '../../fabric/index.ts';
import { edgesAt } from '../../piece/index.ts';
import { modulo } from '../../grid/index.ts';
import { figureRuns } from '../figure.ts';
import type { Plan, PlanRow } from '../types.ts';
import type { FirstNeedles, PatternParts } from './types.ts';

export interface Program {
  readonly parts: PatternParts;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly groups: readonly FirstNeedles[];
}

/** From the bottom up. */
export function programsOf(plan: Plan): Program[] {
  const bands = plan.bands.map(({ firstRow, lastRow }, band) => ({ firstRow, lastRow, band, fill: null }));
  const fills = plan.fills.map(({ firstRow, lastRow }, fill) => ({ firstRow, lastRow, band: null, fill }));
  const together: (typeof bands | typeof fills)[number][][] = [];
  let lastRow = 0;
  for (const pattern of [...bands, ...fills].sort((a, b) => a.firstRow - b.firstRow)) {
    const shares = together.at(-1);
    if (shares && pattern.firstRow <= lastRow) shares.push(pattern);
    else together.push([pattern]);
    lastRow = Math.max(lastRow, pattern.lastRow);
  }
  return together.map((patterns) => {
    const inBands = patterns.flatMap(({ band }) => (band === null ? [] : [band])).sort((a, b) => a - b);
    const inFills = patterns.flatMap(({ fill }) => (fill === null ? [] : [fill])).sort((a, b) => a - b);
    return {
      parts: { bands: inBands, fills: inFills.map((at) => (plan.fills[at] as PlacedFill).fill) },
      firstRow: Math.min(...patterns.map((pattern) => pattern.firstRow)),
      lastRow: Math.max(...patterns.map((pattern) => pattern.lastRow)),
      groups: [
        ...inBands.flatMap((band) => plan.groups.filter((group) => group.band === band).map(needlesOfGroup)),
        ...inFills.map((at) => needlesOfFill(plan, plan.fills[at] as PlacedFill)),
      ],
    };
  });
}

function needlesOfGroup({ block, motif, across, isMirrored }: PlacedGroup): FirstNeedles {
  return { needle: block.first, last: block.last, motif, copies: across, isMirrored };
}

/** The whole copies on the first row of an all-over; where there is none, the copy that the row begins in. */
function needlesOfFill({ outline }: Plan, fill: PlacedFill): FirstNeedles {
  const { motif, copy, isMirrored, firstRow } = fill;
  const edges = edgesAt(outline, firstRow);
  const { origin } = tierOf(fill, firstRow);
  const into = modulo(edges.first - origin, copy.width);
  const whole = into === 0 ? edges.first : edges.first - into + copy.width;
  const copies = Math.floor((edges.last - whole + 1) / copy.width);
  const needle = copies > 0 ? whole : edges.first - into;
  const wide = Math.max(copies, 1) * copy.width;
  return { needle: needle as Slot, last: (needle + wide - 1) as Slot, motif, copies: Math.max(copies, 1), isMirrored };
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
 * first needle of the leftmost group to the last of the rightmost, so those
 * between the groups have to stay back; needles beside all groups are not asked
 * about. An all-over reaches over all needles.
 */
export function clashOnPlaces(plan: Plan, { parts, firstRow, lastRow }: Program, repeat: number): Clash | null {
  const groups = plan.groups.filter(({ band }) => parts.bands.includes(band));
  const fills = plan.fills.filter(({ fill }) => parts.fills.includes(fill));
  // An all-over fills what is between the groups, and asks about it itself.
  const between = fills.length > 0 ? [] : needlesBetween(groups);
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
    for (const group of groups) {
      for (let at = 0; at < widthOf(group.block); at++) {
        const clash = ask(group.block.first + at, isFigureOfGroup(group, row, at));
        if (clash) return clash;
      }
    }
    for (const needle of between) {
      const clash = ask(needle, false);
      if (clash) return clash;
    }
    for (const fill of fills) {
      if (row < fill.firstRow || row > fill.lastRow) continue;
      if (!isEverywhere(fill)) {
        const clash = askInRow(plan.rows[row - 1] as PlanRow, ask);
        if (clash) return clash;
        continue;
      }
      const { copyRow, origin } = tierOf(fill, row);
      // After so many needles copies and repeats begin together again.
      for (let at = 0; at < fill.copy.width * repeat; at++) {
        const cell = fill.copy.cells[copyRow * fill.copy.width + (at % fill.copy.width)];
        const clash = ask(origin + at, cell !== fill.ground);
        if (clash) return clash;
      }
    }
  }
  return null;
}

/** The needles between groups, from left to right. */
function needlesBetween(groups: readonly PlacedGroup[]): number[] {
  const blocks = groups.map(({ block }) => block).sort((a, b) => a.first - b.first);
  const needles: number[] = [];
  let next = blocks[0]?.first ?? 0;
  for (const { first, last } of blocks) {
    for (let needle: number = next; needle < first; needle++) needles.push(needle);
    next = Math.max(next, last + 1) as Slot;
  }
  return needles;
}

/** Whether the copies of an all-over reach over all needles: none are left out, and no border is kept plain. */
function isEverywhere({ border, copies }: PlacedFill): boolean {
  return border.left === 0 && border.right === 0 && copies.without.size === 0;
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

function isFigureOfGroup({ copy, ground, across, leftOut, firstRow, lastRow }: PlacedGroup, row: number, at: number) {
  if (row < firstRow || row > lastRow) return false;
  const up = Math.floor((row - firstRow) / copy.height);
  if (leftOut.has(up * across + Math.floor(at / copy.width))) return false;
  return copy.cells[((row - firstRow) % copy.height) * copy.width + (at % copy.width)] !== ground;
}
