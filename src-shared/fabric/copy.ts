/** One copy of a motif as it lies on the needles. */
import { columnOfNeedle, isMirroredOnNeedles, type Slot } from '../bed/index.ts';
import type { Grid } from '../grid/index.ts';
import {
  blankEdges,
  lineHashes,
  lineHashesAgain,
  trueRepeat,
  type Blank,
  type LineHashes,
} from '../motif/repeat/index.ts';
import { problemError } from '../problem/index.ts';
import type { Pattern } from '../pattern/index.ts';
import type { KnitMotif, KnitPiece } from '../project/index.ts';
import type { PaintedCopies, PaintedMotif } from './painted.ts';
import type { MotifExtent } from './types.ts';

export interface Copy {
  /** Column 0 is the leftmost needle, row 0 the first row knitted. */
  readonly grid: Grid;
  readonly ground: number;
  /** Ground columns at its left and right edge, on the needles. */
  readonly blankLeft: number;
  readonly blankRight: number;
  readonly isMirrored: boolean;
}

interface Known {
  readonly ground: number;
  readonly extent: MotifExtent;
  readonly hashes: LineHashes;
}

/** A large drawing takes longer to measure than to place, and is placed in every size. */
const known = new WeakMap<KnitMotif, Known>();

/** What placing must know of a motif on its ground, measured once for each; `before`: as it was before it was painted. */
export function extentOf(motif: KnitMotif, ground: number, before: PaintedMotif | null = null): MotifExtent {
  const last = known.get(motif);
  if (last?.ground === ground) return last.extent;
  const { grid } = motif;
  const { width, height } = grid;
  const was = before && known.get(before.motif);
  const hashes = was
    ? lineHashesAgain(grid, { grid: before.motif.grid, hashes: was.hashes }, before.rows)
    : lineHashes(grid);
  const extent = { width, height, blank: blankEdges(grid, ground), repeat: trueRepeat(grid, hashes) };
  known.set(motif, { ground, extent, hashes });
  return extent;
}

/**
 * A copy is the true repeat across, or all drawn columns (`unit`), by all drawn
 * rows, on the ground of the piece; as-worn charts are turned for a knit face,
 * and a mirrored group once more. `before`: the copies before the motif was
 * painted. Throws `no-figure`.
 */
export function copyOnNeedles(
  motif: KnitMotif,
  extent: MotifExtent,
  unit: Pattern['unit'],
  { finishedFace, mainYarn: ground }: Pick<KnitPiece, 'finishedFace' | 'mainYarn'>,
  isMirrored: boolean,
  before: PaintedCopies | null = null,
): Copy {
  const width = unit === 'repeat' ? extent.repeat.width : extent.width;
  const isTurned = isMirroredOnNeedles(motif.shows, finishedFace) !== isMirrored;
  const grid = laidOut(motif.grid, width, extent.height, isTurned, before);
  const blank = width === extent.width ? onNeedles(extent.blank, isTurned) : blankEdges(grid, ground);
  if (!blank) throw problemError('no-figure', { motif: motif.name });
  return { grid, ground, blankLeft: blank.left, blankRight: blank.right, isMirrored: isTurned };
}

function onNeedles(blank: Blank | null, isTurned: boolean): Blank | null {
  return blank && isTurned ? { ...blank, left: blank.right, right: blank.left } : blank;
}

/** The lower left of a drawing as it lies on the needles; of copies that lay so already, only the rows that were painted are laid. */
function laidOut(drawn: Grid, width: number, height: number, isTurned: boolean, before: PaintedCopies | null): Grid {
  if (!isTurned && width === drawn.width && height === drawn.height) return drawn;
  const source = Int32Array.from({ length: width }, (_, needle) =>
    columnOfNeedle(needle as Slot, width, 0 as Slot, isTurned),
  );
  const lay = (cells: Uint8Array, row: number): void => {
    const [from, to] = [row * drawn.width, row * width];
    for (let needle = 0; needle < width; needle++) {
      cells[to + needle] = drawn.cells[from + (source[needle] as number)] as number;
    }
  };
  const was = before?.place;
  if (was?.copy.width === width && was.copy.height === height && was.isMirrored === isTurned) {
    const cells = was.copy.cells.slice();
    for (const row of before?.rows ?? []) if (row < height) lay(cells, row);
    return { width, height, cells };
  }
  const cells = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) lay(cells, row);
  return { width, height, cells };
}
