/** One copy of a motif as it lies on the needles. */
import { columnOfNeedle, isMirroredOnNeedles, type Slot } from '../bed/index.ts';
import { crop, type Grid } from '../grid/index.ts';
import { blankEdges, trueRepeat } from '../motif/repeat/index.ts';
import { problemError } from '../problem/index.ts';
import type { Pattern } from '../pattern/index.ts';
import type { KnitMotif, KnitPiece } from '../project/index.ts';
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

/** A large drawing takes longer to measure than to place, and is placed in every size. */
const known = new WeakMap<KnitMotif, { readonly ground: number; readonly extent: MotifExtent }>();

/** What placing must know of a motif on its ground, measured once for each. */
export function extentOf(motif: KnitMotif, ground: number): MotifExtent {
  const last = known.get(motif);
  if (last?.ground === ground) return last.extent;
  const { grid } = motif;
  const { width, height } = grid;
  const extent = { width, height, blank: blankEdges(grid, ground), repeat: trueRepeat(grid) };
  known.set(motif, { ground, extent });
  return extent;
}

/**
 * A copy is the true repeat across, or all drawn columns (`unit`), by all drawn
 * rows, on the ground of the piece; as-worn charts are turned for a knit face,
 * and a mirrored group once more. Throws `no-figure`.
 */
export function copyOnNeedles(
  motif: KnitMotif,
  extent: MotifExtent,
  unit: Pattern['unit'],
  { finishedFace, mainYarn: ground }: Pick<KnitPiece, 'finishedFace' | 'mainYarn'>,
  isMirrored: boolean,
): Copy {
  const width = unit === 'repeat' ? extent.repeat.width : extent.width;
  const drawn = crop(motif.grid, 0, 0, width, extent.height);
  const blank = width === extent.width ? extent.blank : blankEdges(drawn, ground);
  if (!blank) throw problemError('no-figure', { motif: motif.name });
  if (isMirroredOnNeedles(motif.shows, finishedFace) === isMirrored) {
    return { grid: drawn, ground, blankLeft: blank.left, blankRight: blank.right, isMirrored: false };
  }
  return {
    grid: turned(drawn),
    ground,
    blankLeft: blank.right,
    blankRight: blank.left,
    isMirrored: true,
  };
}

function turned({ width, height, cells }: Grid): Grid {
  const source = Int32Array.from({ length: width }, (_, needle) =>
    columnOfNeedle(needle as Slot, width, 0 as Slot, true),
  );
  const result = new Uint8Array(cells.length);
  for (let row = 0; row < height; row++) {
    const start = row * width;
    for (let needle = 0; needle < width; needle++) {
      result[start + needle] = cells[start + (source[needle] as number)] as number;
    }
  }
  return { width, height, cells: result };
}
