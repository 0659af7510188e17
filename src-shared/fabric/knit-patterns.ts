/**
 * The patterns of a piece on its needles, before any anchors. Of a piece that
 * was painted only the rows that hold painted cells are knitted again.
 */
import { copiesIn } from '../pattern/index.ts';
import {
  knitEndNeedles,
  knitEndNeedlesAgain,
  knitUnseen,
  noEndNeedles,
  type EndNeedled,
  type Selecting,
} from './end-needles.ts';
import { makeFabric, rowKnitter } from './fabric.ts';
import type { PaintedCopies } from './painted.ts';
import type { PlacedCopies, PlacedPatterns } from './types.ts';

/** All rows. */
export function knitPatterns(placed: PlacedPatterns, selecting: Selecting): EndNeedled {
  const { outline, main, chooses } = selecting;
  const fabric = makeFabric(outline, copiesIn(placed), main);
  if (chooses === 'ahead-unseen') {
    for (let row = 1; row <= fabric.rows; row++) knitUnseen(fabric, outline, main, row);
  }
  const knitted = { fabric, endNeedles: noEndNeedles(fabric) };
  knitEndNeedles(knitted, selecting, [{ first: 1, last: fabric.rows }]);
  return knitted;
}

/**
 * What `knitPatterns` gives, from what it gave before motifs were painted, and
 * the rows (1-based, ascending) that are not as they were; null where copies do
 * not lie as they did. All but the cells is as it was before.
 */
export function knitPatternsAgain(
  placed: PlacedPatterns,
  selecting: Selecting,
  before: EndNeedled,
  copiesBefore: readonly PaintedCopies[],
): (EndNeedled & { readonly painted: readonly number[] }) | null {
  const copies = copiesIn(placed);
  if (!copies.every((place, at) => liesAs(place, copiesBefore[at]?.place))) return null;
  const { outline, main, chooses } = selecting;
  const { width } = before.fabric;
  const fabric = { ...before.fabric, cells: before.fabric.cells.slice() };
  const endNeedles = before.endNeedles.slice();
  const knit = rowKnitter(fabric, outline, copies, main);
  const rows = rowsPainted(copiesBefore);
  for (const row of rows) {
    knit(row);
    if (chooses === 'ahead-unseen') knitUnseen(fabric, outline, main, row);
    endNeedles[row - 1] = undefined;
  }
  const reached = knitEndNeedlesAgain({ fabric, endNeedles }, selecting, rows);
  const painted = [...reached].filter((row) => {
    const [now, was] = [endNeedles[row - 1], before.endNeedles[row - 1]];
    const isSame =
      now?.isBlank === was?.isBlank &&
      now?.needles.length === was?.needles.length &&
      (now?.needles.every((needle, at) => needle === was?.needles[at]) ?? true);
    if (isSame) endNeedles[row - 1] = was;
    return !isSame || !isSameRow(fabric.cells, before.fabric.cells, (row - 1) * width, row * width);
  });
  return { fabric, endNeedles, painted: painted.sort((a, b) => a - b) };
}

/** The rows (1-based, ascending) that hold painted cells. */
function rowsPainted(copies: readonly PaintedCopies[]): number[] {
  const painted = new Set<number>();
  for (const { place, rows } of copies) {
    for (const copyRow of rows) {
      if (copyRow >= place.copy.height) continue;
      for (let row = place.firstRow + copyRow; row <= place.lastRow; row += place.copy.height) painted.add(row);
    }
  }
  return [...painted].sort((a, b) => a - b);
}

function isSameRow(one: Uint8Array, other: Uint8Array, from: number, to: number): boolean {
  for (let at = from; at < to; at++) if (one[at] !== other[at]) return false;
  return true;
}

/** Whether copies lie where others did, of the same size, and the same of them are left out. */
function liesAs(now: PlacedCopies, before: PlacedCopies | undefined): boolean {
  return (
    before !== undefined &&
    now.copy.width === before.copy.width &&
    now.copy.height === before.copy.height &&
    now.origin === before.origin &&
    now.block?.first === before.block?.first &&
    now.block?.last === before.block?.last &&
    now.firstRow === before.firstRow &&
    now.lastRow === before.lastRow &&
    now.without.size === before.without.size &&
    [...now.without].every(([tier, places]) => {
      const others = before.without.get(tier);
      return others?.size === places.size && [...places].every((at) => others.has(at));
    })
  );
}
