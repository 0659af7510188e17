/** Strands going up the side from the row they knitted to the next that uses them. */
import type { Run, Slot } from '../bed/index.ts';
import { wayMm } from '../piece/index.ts';
import type { LaidRow, LaidStrands, Laying } from './floats.ts';
import { isCarriedUp, longestBetween } from './limit.ts';
import { MAIN_STRAND } from './strand-layer.ts';
import type { Carry, Cut } from './types.ts';

/** By the row they leave: index 0 is row 1; undefined where nothing leaves. */
export interface Ways {
  readonly carries: readonly (readonly Carry[] | undefined)[];
  readonly cuts: readonly (readonly Cut[] | undefined)[];
}

/**
 * The way of each strand to the next row that uses it: carried, or cut and
 * joined again where that is too far up (`isCarriedUp`).
 *
 * A strand is laid in the carriage's direction, so it leaves its span at the
 * far end and enters the next at the near one. After an odd number of rows
 * without it, it waits at the other side and crosses the figure. Main, which
 * is at home in every row, turns at the edge from row to row; it is carried
 * over the rows all in contrast, on which it waits. Where `isCutAside` says so
 * of the rows (1-based) that a strand leaves and enters, it is cut as well
 * instead of carried too far aside.
 */
export function carriesOf(
  laid: LaidStrands,
  settings: Pick<Laying, 'gauges' | 'floatLimit'>,
  isCutAside: (from: number, to: number) => boolean = () => false,
): Ways {
  const wayOf = waysOn(laid, settings, isCutAside);
  const carries = new Array<Carry[] | undefined>(laid.rows.length);
  const cuts = new Array<Cut[] | undefined>(laid.rows.length);
  /** By strand: the row it knitted last. */
  const lastRow: number[] = [];
  const use = (strand: number, row: number): void => {
    const before = lastRow[strand];
    lastRow[strand] = row;
    if (before === undefined) return;
    const way = wayOf(strand, before, row);
    if (way && 'because' in way) (cuts[before - 1] ??= []).push(way);
    else if (way) (carries[before - 1] ??= []).push(way);
  };
  laid.rows.forEach(({ isMainKnitted, strands }, index) => {
    if (isMainKnitted) use(MAIN_STRAND, index + 1);
    for (const { strand } of strands) use(strand, index + 1);
  });
  return { carries, cuts };
}

/** The ways of a piece before some of its rows were laid again. */
export interface WaysBefore {
  readonly laid: LaidStrands;
  readonly ways: Ways;
  /** The rows (1-based) that are not as they were, ascending. */
  readonly painted: readonly number[];
}

/**
 * What `carriesOf` gives, from what it gave before (`layAgain`), and the rows
 * (1-based) on which that is not as it was: only ways that leave a painted row
 * or enter one are worked out. All others stay the values that they were, and
 * where none is another all of them are the value that they were.
 */
export function carriesAgain(
  laid: LaidStrands,
  settings: Pick<Laying, 'gauges' | 'floatLimit'>,
  isCutAside: (from: number, to: number) => boolean,
  before: WaysBefore,
): { readonly ways: Ways; readonly changed: readonly number[] } {
  const wayOf = waysOn(laid, settings, isCutAside);
  const changed: number[] = [];
  const left = new Set<number>();
  for (const row of before.painted) {
    if (endsAlike(before.laid.rows[row - 1] as LaidRow, laid.rows[row - 1] as LaidRow)) continue;
    left.add(row);
    for (const strand of new Set([...strandsOf(before.laid, row), ...strandsOf(laid, row)])) {
      for (const { rows } of [before.laid, laid]) left.add(nextWith(rows, strand, row, -1));
    }
  }
  left.delete(0);
  if (left.size === 0) return { ways: before.ways, changed };
  const carries = before.ways.carries.slice();
  const cuts = before.ways.cuts.slice();
  for (const row of left) {
    const ways = strandsOf(laid, row).flatMap((strand) => {
      const to = row === laid.lastRow[strand] ? 0 : nextWith(laid.rows, strand, row, 1);
      const way = to === 0 ? null : wayOf(strand, row, to);
      return way ? [{ way, place: strandsOf(laid, to).indexOf(strand) }] : [];
    });
    ways.sort((a, b) => a.way.toRow - b.way.toRow || a.place - b.place);
    const [carried, cut]: [Carry[], Cut[]] = [[], []];
    for (const { way } of ways) {
      if ('because' in way) cut.push(way);
      else carried.push(way);
    }
    if (areAlike(carried, carries[row - 1]) && areAlike(cut, cuts[row - 1])) continue;
    carries[row - 1] = carried.length > 0 ? carried : undefined;
    cuts[row - 1] = cut.length > 0 ? cut : undefined;
    changed.push(row);
  }
  return { ways: changed.length > 0 ? { carries, cuts } : before.ways, changed };
}

/** Whether the same strands knit in a row, from the same first needles to the same last ones. */
function endsAlike(one: LaidRow, other: LaidRow): boolean {
  return (
    one.isMainKnitted === other.isMainKnitted &&
    one.strands.length === other.strands.length &&
    one.strands.every(({ strand, first, last }, at) => {
      const same = other.strands[at];
      return strand === same?.strand && first === same.first && last === same.last;
    })
  );
}

function areAlike<Way extends Carry | Cut>(ways: readonly Way[], before: readonly Way[] = []): boolean {
  const keys = Object.keys(ways[0] ?? {}) as (keyof Way)[];
  return ways.length === before.length && ways.every((way, at) => keys.every((key) => way[key] === before[at]?.[key]));
}

/** The next row (1-based) up or down that a strand knits in; 0 where there is none. */
function nextWith(rows: readonly LaidRow[], strand: number, from: number, step: 1 | -1): number {
  for (let row = from + step; row > 0 && row <= rows.length; row += step) {
    if (knits(rows[row - 1] as LaidRow, strand)) return row;
  }
  return 0;
}

function knits({ isMainKnitted, strands }: LaidRow, strand: number): boolean {
  return strand === MAIN_STRAND ? isMainKnitted : strands.some((run) => run.strand === strand);
}

/** The strands of a row, main first. */
function strandsOf({ rows }: LaidStrands, row: number): number[] {
  const { isMainKnitted, strands } = rows[row - 1] as LaidRow;
  const contrast = strands.map(({ strand }) => strand);
  return isMainKnitted ? [MAIN_STRAND, ...contrast] : contrast;
}

/** The way of a strand from a row to the next that it knits in (both 1-based); null where it only turns. */
function waysOn(
  laid: LaidStrands,
  { gauges, floatLimit }: Pick<Laying, 'gauges' | 'floatLimit'>,
  isCutAside: (from: number, to: number) => boolean,
): (strand: number, before: number, toRow: number) => Carry | Cut | null {
  const even = gauges.length === 1 ? longestBetween(floatLimit, gauges, 1, 1) : null;
  const spanOf = (strand: number, row: LaidRow): Run =>
    strand === MAIN_STRAND ? row.edges : (row.strands.find((run) => run.strand === strand) as Run);
  return (index, before, toRow) => {
    if (index === MAIN_STRAND && before === toRow - 1) return null;
    const [left, entered] = [laid.rows[before - 1] as LaidRow, laid.rows[toRow - 1] as LaidRow];
    const from = farEnd(left, spanOf(index, left));
    const near = nearEnd(entered, spanOf(index, entered));
    const strand = laid.strands[index] as Carry['strand'];
    const rows = toRow - before;
    const stitches = Math.abs(near - from);
    const isFarUp = !isCarriedUp(gauges, before, toRow);
    const isOver = !isFarUp && stitches > (even ?? longestBetween(floatLimit, gauges, before, toRow));
    if (isFarUp || (isOver && isCutAside(before, toRow))) {
      const because = isFarUp ? 'far-up' : 'far-aside';
      return { strand, because, toRow, stitches, rows, mm: wayMm(gauges, 0, before, toRow) };
    }
    const first = Math.min(from, near) as Slot;
    const last = Math.max(from, near) as Slot;
    return { strand, toRow, first, last, stitches, rows, mm: wayMm(gauges, stitches, before, toRow), isOver };
  };
}

/** The end of a span at which the carriage leaves it. */
function farEnd(row: LaidRow, span: Run): Slot {
  return row.from === 'left' ? span.last : span.first;
}

/** The end of a span that the carriage comes to first. */
function nearEnd(row: LaidRow, span: Run): Slot {
  return row.from === 'left' ? span.first : span.last;
}
