/**
 * The longest float of each row as a bar beside the row numbers, against the
 * limit: so it is seen where floats are long, and the motif stays legible. Of
 * floats that are hooked or latched up it is what lies loose of them.
 */
import type { Plan, PlanRow } from '@shared/plan/index.ts';
import { looseStitches, type Float } from '@shared/strands/index.ts';
import type { LaidView } from './laid-view.ts';

/** Bars are at least so tall: several rows share one where rows are thinner. */
const LEAST_BAR = 2;
/** From number to number at least. */
const APART = 40;

/** A view so many pixels wide has room for a column of each yarn. */
const WIDE = 760;
/** More yarns than this share one column. */
const MOST_COLUMNS = 3;

/** From the heading to the heads of its columns, where each yarn has one. */
export const COLUMN_HEAD = 18;
const UNDER_HEADING = 22;

/** From the heading to the upper end of the bars, in pixels. */
export function headOfProfile({ rows }: Pick<Plan, 'rows'>, width: number): number {
  return UNDER_HEADING + (profileColumns(rows, width).length > 1 ? COLUMN_HEAD : 0);
}

/** How wide the profile is in a view so many pixels wide; 0: it has no room. */
export function profileWidth({ rows }: Pick<Plan, 'rows'>, width: number): number {
  const { length: columns } = profileColumns(rows, width);
  if (columns === 0) return 0;
  if (columns > 1) return 60 + 44 * columns;
  return width >= 620 ? 96 : width >= 380 ? 64 : 0;
}

/** The longest floats of one yarn. */
export interface ProfileColumn {
  /** Palette index; null: of all yarns together. */
  readonly yarn: number | null;
  /** Index 0 is row 1; null where the row has none. */
  readonly longest: readonly (Float | null)[];
}

/** A column for each yarn that floats, where a view so wide has room for them; else one for all, and none where nothing floats. */
export function profileColumns(rows: readonly PlanRow[], width: number): readonly ProfileColumn[] {
  const byYarn = columnsByYarn(rows);
  if (byYarn.length === 0) return [];
  const isApart = width >= WIDE && byYarn.length > 1 && byYarn.length <= MOST_COLUMNS;
  return isApart ? byYarn : [{ yarn: null, longest: longestOf(rows) }];
}

/** The columns of a profile as they are drawn. */
export interface ColumnRoom {
  /** Pixels of a stitch, in all of them alike. */
  readonly scale: number;
  /** Of each column, in pixels. */
  readonly widths: readonly number[];
}

/**
 * Shares `room` pixels among columns whose longest bars have `most` stitches
 * and beside each bar `beside` pixels. A column is as wide as its heading in
 * `heads` at least, up to an even share of the room, and what is left goes to
 * the bars.
 */
export function columnRoom(
  most: readonly number[],
  heads: readonly number[],
  beside: number,
  room: number,
): ColumnRoom {
  const columns = most.map((longest, index) => ({
    longest,
    least: Math.min(heads[index] as number, room / most.length),
    isByHead: false,
  }));
  // The last one has an even share at least, so they are never all as wide as their headings.
  for (;;) {
    const [byHead, byBars] = [columns.filter(({ isByHead }) => isByHead), columns.filter(({ isByHead }) => !isByHead)];
    const free = room - sum(byHead.map(({ least }) => least)) - byBars.length * beside;
    const scale = free / sum(byBars.map(({ longest }) => longest));
    const narrow = byBars.find(({ longest, least }) => longest * scale + beside < least - 1e-6);
    if (!narrow) {
      const widths = columns.map(({ longest, least, isByHead }) => (isByHead ? least : longest * scale + beside));
      return { scale, widths };
    }
    narrow.isByHead = true;
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** By the rows of a plan. */
const knownByYarn = new WeakMap<readonly PlanRow[], readonly ProfileColumn[]>();

/** A column for each yarn that floats, in the order of the palette. */
export function columnsByYarn(rows: readonly PlanRow[]): readonly ProfileColumn[] {
  let columns = knownByYarn.get(rows);
  if (!columns) {
    const yarns = new Set<number>();
    for (const { floats } of rows) for (const { strand } of floats) yarns.add(strand.yarn);
    columns = [...yarns]
      .sort((one, other) => one - other)
      .map((yarn) => ({
        yarn,
        longest: rows.map(({ floats }) => longestIn(floats.filter(({ strand }) => strand.yarn === yarn))),
      }));
    knownByYarn.set(rows, columns);
  }
  return columns;
}

const known = new WeakMap<readonly PlanRow[], readonly (Float | null)[]>();

/** The longest float of each row, index 0 being row 1; null where a row has none. */
export function longestOf(rows: readonly PlanRow[]): readonly (Float | null)[] {
  let longest = known.get(rows);
  if (!longest) known.set(rows, (longest = rows.map(({ floats }) => longestIn(floats))));
  return longest;
}

/** What lies loose of some floats, in stitches. */
interface Lengths {
  readonly each: Int32Array;
  readonly most: number;
}

/** Asked with each frame, of the same floats as long as the plan stays. */
const knownLengths = new WeakMap<readonly (Float | null)[], Lengths>();

function lengthsOf(longest: readonly (Float | null)[]): Lengths {
  let lengths = knownLengths.get(longest);
  if (!lengths) {
    const each = Int32Array.from(longest, lengthOf);
    knownLengths.set(longest, (lengths = { each, most: each.reduce((most, one) => Math.max(most, one), 0) }));
  }
  return lengths;
}

/** What lies loose of the longest of them, in stitches; 0 where there is none. */
export function mostOf(longest: readonly (Float | null)[]): number {
  return lengthsOf(longest).most;
}

function longestIn(floats: readonly Float[]): Float | null {
  let longest: Float | null = null;
  for (const float of floats) if (lengthOf(float) > lengthOf(longest)) longest = float;
  return longest;
}

/** The longest float of the rows that share a bar, and the pixels of these rows. */
export interface ProfileBar {
  /** The row of that float. */
  readonly row: number;
  readonly float: Float;
  readonly top: number;
  readonly height: number;
}

/** The bars in a view `height` pixels high, from the lowest up. */
export function barsOf(longest: readonly (Float | null)[], laid: LaidView, height: number): ProfileBar[] {
  const { each } = lengthsOf(longest);
  return laid.parts.flatMap(({ first, last, view }) => {
    const step = Math.max(1, Math.ceil(LEAST_BAR / view.cellHeight));
    const lowest = Math.max(first, view.cellAt(0, height).row + 1);
    const highest = Math.min(last, view.cellAt(0, 0).row + 1);
    const bars: ProfileBar[] = [];
    // Bars share the same rows wherever the view is panned to.
    for (let from = lowest - ((lowest - first) % step); from <= highest; from += step) {
      const to = Math.min(from + step - 1, last);
      let row = from;
      for (let at = from + 1; at <= to; at++) if ((each[at - 1] as number) > (each[row - 1] as number)) row = at;
      const float = longest[row - 1];
      const top = view.top(to - 1);
      if (float) bars.push({ row, float, top, height: view.top(from - 2) - top });
    }
    return bars;
  });
}

/** What lies loose of it, in stitches; 0 for none. */
export function lengthOf(float: Float | null | undefined): number {
  return float ? looseStitches(float) : 0;
}

/** The bars that carry their number, of some from the lowest up: those over the limit, the longest first, as many as keep apart. */
export function numberedBars(bars: readonly ProfileBar[]): ProfileBar[] {
  // Hundreds of bars have a few lengths, by which they are sorted sooner than one by one.
  const byLength = new Map<number, ProfileBar[]>();
  for (const bar of bars) {
    if (!bar.float.isOver) continue;
    const stitches = lengthOf(bar.float);
    const alike = byLength.get(stitches);
    if (alike) alike.push(bar);
    else byLength.set(stitches, [bar]);
  }
  const numbered: ProfileBar[] = [];
  for (const stitches of [...byLength.keys()].sort((one, other) => other - one)) {
    for (const bar of byLength.get(stitches) as ProfileBar[]) {
      if (numbered.every(({ top }) => Math.abs(top - bar.top) >= APART)) numbered.push(bar);
    }
  }
  return numbered;
}
