/** The fabric on the needles, from the outline and the groups on it. */
import type { Outline } from '../piece/index.ts';
import type { LaidGroup } from './bands.ts';
import { OUTSIDE, type Fabric } from './types.ts';

/**
 * Main on every needle of the outline, then each group's copies, cut off where
 * the outline ends, or left out. Ground cells of a motif are main.
 */
export function makeFabric(outline: Outline, groups: readonly LaidGroup[], main: number): Fabric {
  let first = Infinity;
  let last = -Infinity;
  for (let row = 0; row < outline.rows; row++) {
    first = Math.min(first, outline.first[row] as number);
    last = Math.max(last, outline.last[row] as number);
  }
  const width = last - first + 1;
  const cells = new Uint8Array(width * outline.rows).fill(OUTSIDE);
  for (let row = 0; row < outline.rows; row++) {
    const start = row * width - first;
    cells.fill(main, start + (outline.first[row] as number), start + (outline.last[row] as number) + 1);
  }
  const fabric = { first, width, rows: outline.rows, cells };
  for (const group of groups) knitInto(fabric, outline, group);
  return fabric;
}

function knitInto(fabric: Fabric, outline: Outline, { place, copy, leftOut }: LaidGroup): void {
  const { width, height, cells } = copy.grid;
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
          clear(fabric, outline, row, place.block.first + across * width, width, copy.ground);
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
