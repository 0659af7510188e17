/**
 * Strands of a fabric of which a few rows were painted: only these are laid
 * again, all others stay the values that they were.
 */
import { widthOf } from '../bed/index.ts';
import type { Fabric } from '../fabric/index.ts';
import { edgesAt, isSameGauge } from '../piece/index.ts';
import { rowLayer, scalesOf, type LaidRow, type LaidStrands, type Laying, type ScaleRun } from './floats.ts';
import { MAIN_STRAND, StrandLayer } from './strand-layer.ts';

/** A fabric before it was painted, and its strands. */
export interface LaidBefore {
  readonly fabric: Fabric;
  readonly laid: LaidStrands;
}

export interface LaidAgain {
  readonly laid: LaidStrands;
  /** The rows (1-based) that are not as they were, ascending. */
  readonly painted: readonly number[];
}

/** Above this share of the rows it takes no longer to lay all of them. */
const MOST_OF_ROWS = 0.25;

/**
 * What `layStrands` gives, from what it gave before; null where that cannot be
 * told from a few rows: balls of groups, a strand that comes in, goes out or
 * begins on another row, or too many rows. All but the cells is as it was
 * before: outline, gauges, limit, main yarn, first side.
 */
export function layAgain(fabric: Fabric, laying: Laying, before: LaidBefore): LaidAgain | null {
  const { laid: was } = before;
  if (laying.ownBalls.length > 0 || was.strands.some(({ group }) => group !== null)) return null;
  const painted = rowsPainted(fabric, before.fabric);
  if (painted === null || painted.length > fabric.rows * MOST_OF_ROWS) return null;
  if (painted.length === 0) return { laid: was, painted };
  const scales = scalesOf(laying);
  let run = 0;
  const layer = new StrandLayer(
    { main: laying.main, firstSlot: fabric.first },
    (scales[0] as ScaleRun).scale,
    was.strands,
  );
  const layRow = rowLayer(fabric, laying, layer);
  const totals = was.totals.map(({ gauge, stitches, floated }) => ({
    gauge,
    stitches: [...stitches],
    floated: [...floated],
  }));
  const rows = [...was.rows];
  for (const row of painted) {
    while (row > (scales[run] as ScaleRun).last) layer.changeScale((scales[++run] as ScaleRun).scale);
    const { gauge } = scales[run] as ScaleRun;
    const total = totals.find((of) => isSameGauge(of.gauge, gauge));
    const old = rows[row - 1] as LaidRow;
    const now = layRow(row);
    if (layer.strands.length > was.strands.length || !total) return null;
    const width = widthOf(edgesAt(laying.outline, row));
    for (const [shares, sign] of [
      [layer.sharesOf(old, width), -1],
      [layer.sharesOf(now, width), 1],
    ] as const) {
      for (const { strand, stitches, floated } of shares) {
        total.stitches[strand] = (total.stitches[strand] as number) + sign * stitches;
        total.floated[strand] = (total.floated[strand] as number) + sign * floated;
      }
    }
    rows[row - 1] = now;
  }
  const lastRow = lastRowsAfter(was, rows, painted);
  return lastRow && { laid: { strands: was.strands, totals, firstRow: was.firstRow, lastRow, rows }, painted };
}

/** The rows (1-based) on which two fabrics differ, from the bottom up; null where they are not of one size. */
function rowsPainted(fabric: Fabric, before: Fabric): number[] | null {
  const { first, width, rows, cells } = fabric;
  if (before.first !== first || before.width !== width || before.rows !== rows) return null;
  const painted: number[] = [];
  const look = (at: number): void => {
    if (cells[at] === before.cells[at]) return;
    const row = Math.floor(at / width) + 1;
    if (painted.at(-1) !== row) painted.push(row);
  };
  const [now, then] = [inFours(cells), inFours(before.cells)];
  let done = 0;
  if (now && then) {
    const fours = now.length;
    for (let four = 0; four < fours; four++) {
      if (now[four] !== then[four]) for (let at = four * 4; at < four * 4 + 4; at++) look(at);
    }
    done = fours * 4;
  }
  for (let at = done; at < cells.length; at++) look(at);
  return painted;
}

/** The cells four in one number, but for those that are left over; null where they do not lie so. */
function inFours({ buffer, byteOffset, length }: Uint8Array): Int32Array | null {
  return byteOffset % 4 === 0 ? new Int32Array(buffer, byteOffset, Math.floor(length / 4)) : null;
}

/**
 * The last row of each strand after some rows were laid again; null where a
 * strand may begin on another row than before, or in another order.
 */
function lastRowsAfter(was: LaidStrands, rows: readonly LaidRow[], painted: readonly number[]): number[] | null {
  const lastRow = [...was.lastRow];
  for (const row of painted) {
    const then = strandsOf(was.rows[row - 1] as LaidRow);
    const now = strandsOf(rows[row - 1] as LaidRow);
    if (then.length === now.length && then.every((strand, at) => strand === now[at])) continue;
    if (then.some((strand) => was.firstRow[strand] === row)) return null;
    for (const strand of now) {
      if (row < (was.firstRow[strand] as number) || was.firstRow[strand] === 0) return null;
      lastRow[strand] = Math.max(lastRow[strand] as number, row);
    }
  }
  return lastRow.map((last, strand) => {
    let row = last;
    while (row > 0 && !strandsOf(rows[row - 1] as LaidRow).includes(strand)) row--;
    return row;
  });
}

/** The strands that knit in a row, main first. */
function strandsOf({ strands, isMainKnitted }: LaidRow): number[] {
  const contrast = strands.map(({ strand }) => strand);
  return isMainKnitted ? [MAIN_STRAND, ...contrast] : contrast;
}
