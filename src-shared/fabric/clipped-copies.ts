/**
 * Copies that are clipped: they lose figure where the piece ends, in the border,
 * or above the last row. And which of them are knitted at all.
 */
import type { Grid } from '../grid/index.ts';
import type { Outline } from '../piece/index.ts';
import type { ClippedCopies } from '../pattern/index.ts';
import { rowsOfTier, runOn, type Rows } from './copies.ts';
import type { PaintedCopies } from './painted.ts';
import type { ClippedCopy, Clipping, CopiesPlace } from './types.ts';

/** Share of its figure that a copy may lose and still be read. */
const READS_WITHOUT = 0.25;

/**
 * What the edges leave of copies, `across` in each tier; null: as many as show
 * figure on the piece. The cost grows with the rows, and with the copies that
 * lose some. `before`: the copies before their motif was painted.
 */
export function clippingOf(
  place: CopiesPlace,
  across: number | null,
  outline: Outline,
  keeps: ClippedCopies,
  before: PaintedCopies | null = null,
): Clipping {
  const inRows = figureInRows(place, before);
  const figure = inRows.reduce((sum, count) => sum + count, 0);
  const { height } = place.copy;
  let whole = 0;
  const [clipped, leftOut]: [ClippedCopy[], ClippedCopy[]] = [[], []];
  const without = new Map<number, Set<number>>();
  let shown = 0;
  let losing: [number, Loss][] = [];
  /** How far a tier stands above the one whose losses are known. */
  let up = 0;
  for (let tier = 0; place.firstRow + tier * height <= place.lastRow; tier++) {
    if (tier > 0 && isAsBelow(place, outline, tier)) up += height;
    else {
      const [from, to] = across === null ? placesShown(place, outline, tier) : [0, across - 1];
      shown = to - from + 1;
      losing = [...lossesIn(place, outline, inRows, tier, from, to)].sort(([one], [other]) => one - other);
      up = 0;
    }
    whole += shown - losing.length;
    for (const [at, { lost, first, last }] of losing) {
      if (across === null && lost === figure) continue;
      const copy: ClippedCopy = { tier, place: at, lost, figure, rows: [first + up, last + up] };
      if (isLeftOut(copy, keeps)) {
        leftOut.push(copy);
        without.set(tier, (without.get(tier) ?? new Set()).add(at));
      } else clipped.push(copy);
    }
  }
  return { whole, clipped, leftOut, without };
}

/** Whether a tier loses what the one below it does: it lies as that one, and between the same edges on each row. */
function isAsBelow(place: CopiesPlace, outline: Outline, tier: number): boolean {
  const { height } = place.copy;
  const rows = rowsOfTier(place, tier);
  if (place.step !== 0 || rows.last - rows.first + 1 < height) return false;
  if ((evenFrom(outline)[rows.last - 1] as number) <= rows.first - height) return true;
  for (let at = rows.first - 1; at < rows.last; at++) {
    if (outline.first[at] !== outline.first[at - height] || outline.last[at] !== outline.last[at - height])
      return false;
  }
  return true;
}

/** An outline is never changed, and asked with each cell that is painted. */
const evenRows = new WeakMap<Outline, Int32Array>();

/** For each row (index 0 is row 1) the lowest row from which on up to it the edges stay on their needles. */
function evenFrom(outline: Outline): Int32Array {
  const known = evenRows.get(outline);
  if (known) return known;
  const { rows, first, last } = outline;
  const from = new Int32Array(rows);
  for (let at = 0; at < rows; at++) {
    const isEven = at > 0 && first[at] === first[at - 1] && last[at] === last[at - 1];
    from[at] = isEven ? (from[at - 1] as number) : at + 1;
  }
  evenRows.set(outline, from);
  return from;
}

/** True if a copy that is clipped so is not knitted. */
function isLeftOut({ lost, figure }: ClippedCopy, keeps: ClippedCopies): boolean {
  return keeps === 'left-out' || (keeps === 'kept-if-read' && lost > figure * READS_WITHOUT);
}

/** The places of a tier that have needles on the piece; none: the last is before the first. */
function placesShown(place: CopiesPlace, outline: Outline, tier: number): readonly [from: number, to: number] {
  const rows = rowsOfTier(place, tier);
  let [leftmost, rightmost] = [Infinity, -Infinity];
  for (let row = rows.first; row <= rows.last; row++) {
    const run = runOn(place, outline, row);
    if (!run) continue;
    leftmost = Math.min(leftmost, run.first);
    rightmost = Math.max(rightmost, run.last);
  }
  if (leftmost > rightmost) return [0, -1];
  const placeOf = (needle: number): number =>
    Math.floor((needle - place.origin - tier * place.step) / place.copy.width);
  return [placeOf(leftmost), placeOf(rightmost)];
}

interface Loss extends Rows {
  readonly lost: number;
}

/** What the copies `from` … `to` of a tier lose, by their places; those that lose nothing are missing. */
function lossesIn(
  place: CopiesPlace,
  outline: Outline,
  inRows: Int32Array,
  tier: number,
  from: number,
  to: number,
): Map<number, Loss> {
  const { ground, copy } = place;
  const { width, height, cells } = copy;
  const origin = place.origin + tier * place.step;
  const rows = rowsOfTier(place, tier);
  const losses = new Map<number, Loss>();
  for (let copyRow = 0; copyRow < height; copyRow++) {
    const row = Math.min(rows.first + copyRow, rows.last);
    const run = row < rows.first + copyRow ? null : runOn(place, outline, row);
    // The places that lie within the run.
    const first = run ? Math.ceil((run.first - origin) / width) : to + 1;
    const last = run ? Math.floor((run.last + 1 - origin) / width) - 1 : to;
    for (let at = from; at <= to; at++) {
      if (first <= at && at <= last) {
        at = last;
        continue;
      }
      let lost = inRows[copyRow] as number;
      if (run) {
        const start = origin + at * width;
        const end = Math.min(start + width - 1, run.last);
        for (let needle = Math.max(start, run.first); needle <= end; needle++) {
          if (cells[copyRow * width + needle - start] !== ground) lost--;
        }
      }
      if (lost === 0) continue;
      const before = losses.get(at);
      losses.set(at, { lost: (before?.lost ?? 0) + lost, first: before?.first ?? row, last: row });
    }
  }
  return losses;
}

/** By the copy: it is never changed. */
const counted = new WeakMap<Grid, { readonly ground: number; readonly inRows: Int32Array }>();

/** Figure stitches in each row of a copy. */
function figureInRows({ copy, ground }: CopiesPlace, before: PaintedCopies | null): Int32Array {
  const known = counted.get(copy);
  if (known?.ground === ground) return known.inRows;
  const was = before && isSameSize(before.place.copy, copy) ? counted.get(before.place.copy) : undefined;
  const isKnown = was?.ground === ground;
  const inRows = isKnown ? was.inRows.slice() : new Int32Array(copy.height);
  const count = (row: number): void => {
    inRows[row] = figureIn(copy.cells, row * copy.width, (row + 1) * copy.width, ground);
  };
  if (before && isKnown) for (const row of before.rows) if (row < copy.height) count(row);
  if (!isKnown) for (let row = 0; row < copy.height; row++) count(row);
  counted.set(copy, { ground, inRows });
  return inRows;
}

function isSameSize(one: Grid, other: Grid): boolean {
  return one.width === other.width && one.height === other.height;
}

function figureIn(cells: Uint8Array, from: number, to: number, ground: number): number {
  let count = 0;
  for (let at = from; at < to; at++) if (cells[at] !== ground) count++;
  return count;
}
