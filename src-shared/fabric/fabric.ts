/** The fabric on the needles, from the outline and the copies on it. */
import { widthOf } from '../bed/index.ts';
import { modulo } from '../grid/index.ts';
import { recolour, stripeAt } from '../pattern/index.ts';
import { needlesTaken, type Outline } from '../piece/index.ts';
import { runOn, tierOf } from './copies.ts';
import { OUTSIDE, type Fabric, type PlacedCopies } from './types.ts';

/**
 * Main on every needle of the outline, then the copies of each pattern, clipped
 * where the outline ends, or left out, in the colours that the rows are in.
 * Ground cells of a motif are main.
 */
export function makeFabric(outline: Outline, copies: readonly PlacedCopies[], main: number): Fabric {
  const { first, last } = needlesTaken(outline);
  const width = last - first + 1;
  const cells = new Uint8Array(width * outline.rows).fill(OUTSIDE);
  for (let row = 0; row < outline.rows; row++) {
    const start = row * width - first;
    cells.fill(main, start + (outline.first[row] as number), start + (outline.last[row] as number) + 1);
  }
  const fabric = { first, width, rows: outline.rows, cells };
  for (const place of copies) knitInto(fabric, outline, place);
  return fabric;
}

/** Rows of copies are laid out once, as wide as they reach and a copy more, and taken from where each row begins. */
function knitInto(fabric: Fabric, outline: Outline, place: PlacedCopies): void {
  const { ground, block, without, colours } = place;
  const { width, cells } = place.copy;
  const length = width + (block ? widthOf(block) : fabric.width);
  const lines: Uint8Array[] = [];
  const lineOf = (copyRow: number): Uint8Array => (lines[copyRow] ??= repeated(cells, copyRow * width, width, length));
  for (let row = place.firstRow; row <= place.lastRow; row++) {
    const run = runOn(place, outline, row);
    if (!run) continue;
    const { tier, copyRow, origin } = tierOf(place, row);
    const into = modulo(run.first - origin, width);
    const start = (row - 1) * fabric.width - fabric.first;
    fabric.cells.set(lineOf(copyRow).subarray(into, into + run.last - run.first + 1), start + run.first);
    for (const at of without.get(tier) ?? []) {
      const first = Math.max(run.first, origin + at * width);
      const last = Math.min(run.last, origin + (at + 1) * width - 1);
      if (first <= last) fabric.cells.fill(ground, start + first, start + last + 1);
    }
    const stripe = colours && stripeAt(colours.order, row - colours.from);
    if (stripe) recolour(fabric.cells.subarray(start + run.first, start + run.last + 1), stripe, ground);
  }
}

/** The `width` cells from `start` on, one time after the other. */
function repeated(cells: Uint8Array, start: number, width: number, length: number): Uint8Array {
  const line = new Uint8Array(length);
  line.set(cells.subarray(start, start + width));
  for (let done = width; done < length; done *= 2) line.copyWithin(done, 0, Math.min(done, length - done));
  return line;
}
