/** The fabric on the needles, from the outline and the groups and fills on it. */
import { modulo } from '../grid/index.ts';
import { needlesTaken, type Outline } from '../piece/index.ts';
import { fillRun, tierOf } from './fill-place.ts';
import { OUTSIDE, type Fabric, type PlacedFill, type PlacedGroup } from './types.ts';

/**
 * Main on every needle of the outline, then the copies of each group and fill,
 * clipped where the outline ends, or left out. Ground cells of a motif are main.
 */
export function makeFabric(
  outline: Outline,
  groups: readonly PlacedGroup[],
  fills: readonly PlacedFill[],
  main: number,
): Fabric {
  const { first, last } = needlesTaken(outline);
  const width = last - first + 1;
  const cells = new Uint8Array(width * outline.rows).fill(OUTSIDE);
  for (let row = 0; row < outline.rows; row++) {
    const start = row * width - first;
    cells.fill(main, start + (outline.first[row] as number), start + (outline.last[row] as number) + 1);
  }
  const fabric = { first, width, rows: outline.rows, cells };
  for (const group of groups) knitInto(fabric, outline, group);
  for (const fill of fills) knitFill(fabric, outline, fill);
  return fabric;
}

function knitInto(fabric: Fabric, outline: Outline, place: PlacedGroup): void {
  const { copy, ground, leftOut } = place;
  const { width, height, cells } = copy;
  const block = new Uint8Array(width * place.across);
  for (let copyRow = 0; copyRow < height; copyRow++) {
    const line = cells.subarray(copyRow * width, (copyRow + 1) * width);
    for (let across = 0; across < place.across; across++) block.set(line, across * width);
    for (let up = 0; up < place.up; up++) {
      const row = place.firstRow - 1 + up * height + copyRow;
      const from = Math.max(place.block.first, outline.first[row] as number);
      const to = Math.min(place.block.last, outline.last[row] as number);
      if (from > to) continue;
      const visible = block.subarray(from - place.block.first, to - place.block.first + 1);
      fabric.cells.set(visible, row * fabric.width + from - fabric.first);
      for (let across = 0; across < place.across; across++) {
        if (leftOut.has(up * place.across + across))
          clear(fabric, outline, row, place.block.first + across * width, width, ground);
      }
    }
  }
}

/** Takes the copy on needles `first` … out of a row, on the piece. */
function clear(fabric: Fabric, outline: Outline, row: number, first: number, width: number, main: number): void {
  const from = Math.max(first, outline.first[row] as number);
  const to = Math.min(first + width - 1, outline.last[row] as number);
  const start = row * fabric.width - fabric.first;
  if (from <= to) fabric.cells.fill(main, start + from, start + to + 1);
}

/** Rows of copies are laid out once, as wide as the piece and a copy, and taken from where each row begins. */
function knitFill(fabric: Fabric, outline: Outline, place: PlacedFill): void {
  const { ground, copies } = place;
  const { width, cells } = place.copy;
  const lines: Uint8Array[] = [];
  const lineOf = (copyRow: number): Uint8Array =>
    (lines[copyRow] ??= Uint8Array.from(
      { length: fabric.width + width },
      (_, at) => cells[copyRow * width + (at % width)] as number,
    ));
  for (let row = place.firstRow; row <= place.lastRow; row++) {
    const run = fillRun(place, outline, row);
    if (!run) continue;
    const { tier, copyRow, origin } = tierOf(place, row);
    const into = modulo(run.first - origin, width);
    const start = (row - 1) * fabric.width - fabric.first;
    fabric.cells.set(lineOf(copyRow).subarray(into, into + run.last - run.first + 1), start + run.first);
    for (const at of copies.without.get(tier) ?? []) {
      const first = Math.max(run.first, origin + at * width);
      const last = Math.min(run.last, origin + (at + 1) * width - 1);
      if (first <= last) fabric.cells.fill(ground, start + first, start + last + 1);
    }
  }
}
