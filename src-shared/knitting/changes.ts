/**
 * What a change of the design means for a piece that is on the needles: which
 * rows that are knitted already would be others now, and from where on the rest
 * is. The piece goes on as it was begun until its knitter decides.
 */
import type { Act } from '../plan/index.ts';
import type { KnittingOrder, YarnRun } from './model.ts';
import { putRight, type PutBack } from './putting-back.ts';
import { settingsAt, type Settings, type Supply } from './settings.ts';
import { lastReading, stopsOf, type StopRow } from './stops.ts';

/** In what a row differs: needles in work, yarns, what is done before it, the carriage's side; or there is none any more. */
export type RowDifference = 'stitches' | 'yarns' | 'acts' | 'carriage' | 'gone';

/** Rows one above the other (from 1) that differ in the same. */
export interface DifferingRows {
  readonly first: number;
  readonly last: number;
  readonly differ: readonly RowDifference[];
}

export interface OrderChange {
  /** Nothing of it is another. */
  readonly isSame: boolean;
  /** Of the rows that are knitted, bottom to top. */
  readonly knitted: readonly DifferingRows[];
  /** The lowest row that is not knitted yet and is another, or is there in one of the two alone; null where none is. */
  readonly aheadFrom: number | null;
  /** How many rows the piece has, as it was begun and now. */
  readonly rows: { readonly begun: number; readonly now: number };
  /** What is set otherwise at the machine to go on by the changed order; null where its rows end below the reading. */
  readonly toSet: readonly PutBack[] | null;
}

/** What differs in `now` from `begun`, of which `reading` rows are knitted. Yarns are told apart by their names. */
export function orderChange(begun: KnittingOrder, now: KnittingOrder, reading: number): OrderChange {
  const rows = { begun: lastReading(begun), now: lastReading(now) };
  const same = sameYarns(begun, now);
  const knitted: DifferingRows[] = [];
  let aheadFrom: number | null = null;
  // The last stop has no row, but it may be left otherwise.
  for (let row = 1; row <= Math.max(rows.begun, rows.now) + 1; row++) {
    const differ = differences(begun, now, row, same);
    if (differ.length === 0) continue;
    if (row > reading) {
      aheadFrom ??= row;
      break;
    }
    const before = knitted.at(-1);
    const goesOn = before?.last === row - 1 && before.differ.join() === differ.join();
    if (before && goesOn) knitted[knitted.length - 1] = { ...before, last: row };
    else knitted.push({ first: row, last: row, differ });
  }
  const isSame = knitted.length === 0 && aheadFrom === null;
  const toSet = isSame ? [] : reading > rows.now ? null : toTakeOver(begun, now, reading, same);
  return { isSame, knitted, aheadFrom, rows, toSet };
}

/** The index in the changed palette of a yarn of the one before; −1 where it has none. */
type SameYarn = (yarn: number) => number;

/** A yarn is the same by its name; one that was renamed, by its place in the palette. */
function sameYarns(begun: KnittingOrder, now: KnittingOrder): SameYarn {
  const [before, after] = [begun, now].map(({ yarns }) => yarns.map(({ name }) => name)) as [string[], string[]];
  const indices = before.map((name, index) => {
    const renamed = after[index];
    if (after.includes(name)) return renamed === name ? index : after.indexOf(name);
    return renamed !== undefined && !before.includes(renamed) ? index : -1;
  });
  return (yarn) => indices[yarn] ?? -1;
}

function differences(begun: KnittingOrder, now: KnittingOrder, row: number, same: SameYarn): RowDifference[] {
  const [one, other] = [stopsOf(begun)[row - 1], stopsOf(now)[row - 1]];
  if (!one && !other) return [];
  if (!one || !other) return ['gone'];
  const differ: RowDifference[] = [];
  if (one.row && other.row) {
    const { needles: before } = one.row;
    const { needles } = other.row;
    if (before.first !== needles.first || before.last !== needles.last) differ.push('stitches');
    else if (yarnsOf(begun, one.row, same) !== yarnsOf(now, other.row, (yarn) => yarn)) differ.push('yarns');
  } else if (one.row || other.row) differ.push('gone');
  const acts = actsText(
    one.acts.map(({ act }) => act),
    begun,
    same,
  );
  if (
    acts !==
    actsText(
      other.acts.map(({ act }) => act),
      now,
      (yarn) => yarn,
    )
  )
    differ.push('acts');
  if (one.carriageAt !== other.carriageAt) differ.push('carriage');
  return differ;
}

/** The yarns of a row as text; main between the runs. */
function yarnsOf({ contrast, mainYarn }: KnittingOrder, { row }: StopRow, same: SameYarn): string {
  const runs = (contrast[row - 1] as readonly YarnRun[]).map(({ first, last, yarn }) => [first, last, same(yarn)]);
  return JSON.stringify([same(mainYarn), runs]);
}

/** Acts as text, in which yarns are those of the changed palette, motifs are told by their names, and lengths to cut are left out. */
function actsText(acts: readonly Act[], { motifs }: KnittingOrder, same: SameYarn): string {
  const nameOf = (id: unknown): unknown => motifs.find((motif) => motif.id === id)?.name ?? id;
  return JSON.stringify(acts, (key, value: unknown) => {
    if (key === 'yarn') return same(value as number);
    if (key === 'mm' || key === 'tailMm') return undefined;
    return key === 'motif' ? nameOf(value) : value;
  });
}

function toTakeOver(begun: KnittingOrder, now: KnittingOrder, reading: number, same: SameYarn): readonly PutBack[] {
  const is = inPalette(settingsAt(begun.order, reading), same);
  const { machine, choices } = putRight(now, reading, is, []);
  return [...machine, ...choices];
}

function inPalette(settings: Settings, same: SameYarn): Settings {
  const supply = <S extends Supply>(one: S): S => ({ ...one, yarn: same(one.yarn) });
  const { feeders, waiting } = settings;
  return {
    ...settings,
    feeders: { 1: feeders[1] && supply(feeders[1]), 2: feeders[2] && supply(feeders[2]) },
    waiting: waiting.map(supply),
  };
}
