/** Copies that lose figure where the piece is narrower than their group, and which of them are knitted at all. */
import { edgesAt, type Outline } from '../piece/index.ts';
import type { CutCopies } from '../project/project.ts';
import type { Copy } from './copy.ts';
import type { PlacedGroup } from './types.ts';

/** A copy that the edge cuts. */
export interface CutCopy {
  /** Counted from the lower left of the group, along its rows. */
  readonly index: number;
  /** Figure stitches that lie beside the piece, of all that a copy has. */
  readonly lost: number;
  readonly figure: number;
  /** First and last row on which some are lost. */
  readonly rows: readonly [first: number, last: number];
}

/** Share of its figure that a copy may lose and still be read. */
const READS_WITHOUT = 0.25;

/** The copies of a group that lose figure, in the order of their index. */
export function cutCopiesOf(place: PlacedGroup, copy: Copy, outline: Outline): CutCopy[] {
  const { block, firstRow, lastRow, across } = place;
  const { width, height, cells } = copy.grid;
  const figure = cells.reduce((count, cell) => count + Number(cell !== copy.ground), 0);
  const cut = new Map<number, { lost: number; first: number; last: number }>();
  for (let row = firstRow; row <= lastRow; row++) {
    const edges = edgesAt(outline, row);
    if (block.first >= edges.first && block.last <= edges.last) continue;
    const start = ((row - firstRow) % height) * width;
    const up = Math.floor((row - firstRow) / height) * across;
    const lose = (first: number, last: number): void => {
      for (let needle = first; needle <= last; needle++) {
        const offset = needle - block.first;
        if (cells[start + (offset % width)] === copy.ground) continue;
        const index = up + Math.floor(offset / width);
        const before = cut.get(index);
        cut.set(index, { lost: (before?.lost ?? 0) + 1, first: before?.first ?? row, last: row });
      }
    };
    lose(block.first, Math.min(block.last, edges.first - 1));
    lose(Math.max(block.first, edges.last + 1), block.last);
  }
  return [...cut]
    .sort(([one], [other]) => one - other)
    .map(([index, { lost, first, last }]) => ({ index, lost, figure, rows: [first, last] }));
}

/** The cut copies that are left out. */
export function leftOut(cut: readonly CutCopy[], keeps: CutCopies): ReadonlySet<number> {
  return new Set(cut.filter(({ lost, figure }) => isLeftOut(lost, figure, keeps)).map(({ index }) => index));
}

/** True if a copy that loses `lost` of its `figure` stitches is not knitted. */
export function isLeftOut(lost: number, figure: number, keeps: CutCopies): boolean {
  return keeps === 'left-out' || (keeps === 'kept-if-read' && lost > figure * READS_WITHOUT);
}
