/**
 * Copies that are clipped: they lose figure where the piece is narrower than
 * their group. And which of them are knitted at all.
 */
import { edgesAt, type Outline } from '../piece/index.ts';
import type { ClippedCopies } from '../pattern/index.ts';
import type { ClippedCopy, PlacedGroup } from './types.ts';

/** Share of its figure that a copy may lose and still be read. */
const READS_WITHOUT = 0.25;

/** The copies of a group that lose figure, in the order of their index. */
export function clippedCopiesOf(
  place: Pick<PlacedGroup, 'block' | 'copy' | 'ground' | 'across' | 'firstRow' | 'lastRow'>,
  outline: Outline,
): ClippedCopy[] {
  const { block, copy, ground, across, firstRow, lastRow } = place;
  const { width, height, cells } = copy;
  const figure = cells.reduce((count, cell) => count + Number(cell !== ground), 0);
  const clipped = new Map<number, { lost: number; first: number; last: number }>();
  for (let row = firstRow; row <= lastRow; row++) {
    const edges = edgesAt(outline, row);
    if (block.first >= edges.first && block.last <= edges.last) continue;
    const start = ((row - firstRow) % height) * width;
    const up = Math.floor((row - firstRow) / height) * across;
    const lose = (first: number, last: number): void => {
      for (let needle = first; needle <= last; needle++) {
        const offset = needle - block.first;
        if (cells[start + (offset % width)] === ground) continue;
        const index = up + Math.floor(offset / width);
        const before = clipped.get(index);
        clipped.set(index, { lost: (before?.lost ?? 0) + 1, first: before?.first ?? row, last: row });
      }
    };
    lose(block.first, Math.min(block.last, edges.first - 1));
    lose(Math.max(block.first, edges.last + 1), block.last);
  }
  return [...clipped]
    .sort(([one], [other]) => one - other)
    .map(([index, { lost, first, last }]) => ({ index, lost, figure, rows: [first, last] }));
}

/** The clipped copies that are left out, by their index. */
export function leftOutOf(clipped: readonly ClippedCopy[], keeps: ClippedCopies): ReadonlySet<number> {
  return new Set(clipped.filter(({ lost, figure }) => isLeftOut(lost, figure, keeps)).map(({ index }) => index));
}

/** True if a copy that loses `lost` of its `figure` stitches is not knitted. */
export function isLeftOut(lost: number, figure: number, keeps: ClippedCopies): boolean {
  return keeps === 'left-out' || (keeps === 'kept-if-read' && lost > figure * READS_WITHOUT);
}
