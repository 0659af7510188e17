/** The fabric on the needles, from the outline and the copies on it. */
import { widthOf } from '../bed/index.ts';
import { modulo } from '../grid/index.ts';
import { recolour, stripeAt } from '../pattern/index.ts';
import { edgesAt, needlesTaken, type Outline } from '../piece/index.ts';
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
  const fabric = { first, width, rows: outline.rows, cells };
  const knit = rowKnitter(fabric, outline, copies, main);
  for (let row = 1; row <= outline.rows; row++) knit(row);
  return fabric;
}

/**
 * Knits rows (1-based) of a fabric one by one, whatever their needles knitted
 * before. Rows of copies are laid out once, as wide as they reach and a copy
 * more, and taken from where each row begins.
 */
export function rowKnitter(
  fabric: Fabric,
  outline: Outline,
  copies: readonly PlacedCopies[],
  main: number,
): (row: number) => void {
  const lines = copies.map((): Uint8Array[] => []);
  const lineOf = (at: number, copyRow: number): Uint8Array => {
    const { copy, block } = copies[at] as PlacedCopies;
    const { width, cells } = copy;
    const length = width + (block ? widthOf(block) : fabric.width);
    return ((lines[at] as Uint8Array[])[copyRow] ??= repeated(cells, copyRow * width, width, length));
  };
  return (row) => {
    const start = (row - 1) * fabric.width - fabric.first;
    const edges = edgesAt(outline, row);
    fabric.cells.fill(main, start + edges.first, start + edges.last + 1);
    for (let at = 0; at < copies.length; at++) {
      const place = copies[at] as PlacedCopies;
      const run = row >= place.firstRow && row <= place.lastRow ? runOn(place, outline, row) : null;
      if (!run) continue;
      const { ground, without, colours, copy } = place;
      const { tier, copyRow, origin } = tierOf(place, row);
      const into = modulo(run.first - origin, copy.width);
      fabric.cells.set(lineOf(at, copyRow).subarray(into, into + run.last - run.first + 1), start + run.first);
      for (const out of without.get(tier) ?? []) {
        const first = Math.max(run.first, origin + out * copy.width);
        const last = Math.min(run.last, origin + (out + 1) * copy.width - 1);
        if (first <= last) fabric.cells.fill(ground, start + first, start + last + 1);
      }
      const stripe = colours && stripeAt(colours.order, row - colours.from);
      if (stripe) recolour(fabric.cells.subarray(start + run.first, start + run.last + 1), stripe, ground);
    }
  };
}

/** The `width` cells from `start` on, one time after the other. */
function repeated(cells: Uint8Array, start: number, width: number, length: number): Uint8Array {
  const line = new Uint8Array(length);
  line.set(cells.subarray(start, start + width));
  for (let done = width; done < length; done *= 2) line.copyWithin(done, 0, Math.min(done, length - done));
  return line;
}
