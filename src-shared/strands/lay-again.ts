/**
 * Strands of a fabric of which a few rows were painted: only these are laid
 * again, all others stay the values that they were.
 */
import { widthOf } from '../bed/index.ts';
import { alikeAmong, type Fabric } from '../fabric/index.ts';
import { isSameGauge } from '../piece/index.ts';
import { rowLayer, scalesOf, type LaidRow, type LaidStrands, type Laying, type ScaleRun } from './floats.ts';
import { MAIN_STRAND, StrandLayer } from './strand-layer.ts';
import type { Float } from './types.ts';

/** Above this share of the rows it takes no longer to lay all of them. */
const MOST_OF_ROWS = 0.25;

/**
 * What `layStrands` gives, from what it gave before the rows of `painted`
 * (1-based, ascending) were painted; null where that cannot be told from a few
 * rows: balls of groups, a strand that comes in, goes out or begins on another
 * row, or too many rows. All but the cells is as it was before: outline, gauges,
 * limit, main yarn, first side.
 */
export function layAgain(
  fabric: Fabric,
  laying: Laying,
  was: LaidStrands,
  painted: readonly number[],
): LaidStrands | null {
  if (laying.ownBalls.length > 0 || was.strands.some(({ group }) => group !== null)) return null;
  if (painted.length > fabric.rows * MOST_OF_ROWS) return null;
  if (painted.length === 0) return was;
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
  const rows = was.rows.slice();
  const alike = alikeAmong(
    fabric,
    painted.map((row) => row - 1),
  );
  /** By the lowest of the painted rows that are alike: what was laid on this gauge. */
  let known = new Map<number, LaidRow>();
  /** How often more, or less, a row lies there; rows that are alike have one list of floats between them. */
  let times = new Map<readonly Float[], { readonly laid: LaidRow; more: number }>();
  const count = (laid: LaidRow, more: number): void => {
    const counted = times.get(laid.floats);
    if (counted) counted.more += more;
    else times.set(laid.floats, { laid, more });
  };
  /** What was counted on rows of one gauge; all that have rows have totals. */
  const addUp = ({ gauge }: ScaleRun): void => {
    const total = totals.find((of) => isSameGauge(of.gauge, gauge)) as (typeof totals)[number];
    for (const { laid, more } of times.values()) {
      if (more === 0) continue;
      for (const { strand, stitches, floated } of layer.sharesOf(laid, widthOf(laid.edges))) {
        total.stitches[strand] = (total.stitches[strand] as number) + more * stitches;
        total.floated[strand] = (total.floated[strand] as number) + more * floated;
      }
    }
    times = new Map();
  };
  for (let at = 0; at < painted.length; at++) {
    const row = painted[at] as number;
    while (row > (scales[run] as ScaleRun).last) {
      addUp(scales[run] as ScaleRun);
      layer.changeScale((scales[++run] as ScaleRun).scale);
      known = new Map();
    }
    const old = rows[row - 1] as LaidRow;
    const lowest = alike[at] as number;
    const like = known.get(lowest);
    const now = like ? { ...like, from: old.from } : layRow(row);
    if (!like) known.set(lowest, now);
    if (layer.strands.length > was.strands.length) return null;
    count(old, -1);
    count(now, 1);
    rows[row - 1] = now;
  }
  addUp(scales[run] as ScaleRun);
  const lastRow = lastRowsAfter(was, rows, painted);
  return lastRow && { strands: was.strands, totals, firstRow: was.firstRow, lastRow, rows };
}

/**
 * The last row of each strand after some rows were laid again; null where a
 * strand may begin on another row than before, or in another order.
 */
function lastRowsAfter(was: LaidStrands, rows: readonly LaidRow[], painted: readonly number[]): number[] | null {
  const lastRow = [...was.lastRow];
  for (const row of painted) {
    const [rowThen, rowNow] = [was.rows[row - 1] as LaidRow, rows[row - 1] as LaidRow];
    if (areStrandsAlike(rowThen, rowNow)) continue;
    const [then, now] = [strandsOf(rowThen), strandsOf(rowNow)];
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

/** Whether the same strands knit in two rows, in the same order. */
function areStrandsAlike(one: LaidRow, other: LaidRow): boolean {
  return (
    one.isMainKnitted === other.isMainKnitted &&
    one.strands.length === other.strands.length &&
    one.strands.every(({ strand }, at) => strand === other.strands[at]?.strand)
  );
}

/** The strands that knit in a row, main first. */
function strandsOf({ strands, isMainKnitted }: LaidRow): number[] {
  const contrast = strands.map(({ strand }) => strand);
  return isMainKnitted ? [MAIN_STRAND, ...contrast] : contrast;
}
