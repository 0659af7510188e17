/** Strands going up the side from the row they knitted to the next that uses them. */
import type { Run, Slot } from '../bed/index.ts';
import { wayMm } from '../piece/index.ts';
import type { LaidRow, LaidStrands, Laying } from './floats.ts';
import { isCarriedUp, longestBetween } from './limit.ts';
import { MAIN_STRAND } from './strand-layer.ts';
import type { Carry, Cut } from './types.ts';

/** By the row they leave: index 0 is row 1; undefined where nothing leaves. */
export interface Ways {
  readonly carries: readonly (readonly Carry[] | undefined)[];
  readonly cuts: readonly (readonly Cut[] | undefined)[];
}

/**
 * The way of each strand to the next row that uses it: carried, or cut and
 * joined again where that is too far up (`isCarriedUp`).
 *
 * A strand is laid in the carriage's direction, so it leaves its span at the
 * far end and enters the next at the near one. After an odd number of rows
 * without it, it waits at the other side and crosses the figure. Main, which
 * is at home in every row, turns at the edge from row to row; it is carried
 * over the rows all in contrast, on which it waits. Where `isCutAside` says so
 * of the rows (1-based) that a strand leaves and enters, it is cut as well
 * instead of carried too far aside.
 */
export function carriesOf(
  laid: LaidStrands,
  settings: Pick<Laying, 'gauges' | 'floatLimit'>,
  isCutAside: (from: number, to: number) => boolean = () => false,
): Ways {
  const { gauges, floatLimit } = settings;
  const even = gauges.length === 1 ? longestBetween(floatLimit, gauges, 1, 1) : null;
  const carries = new Array<Carry[] | undefined>(laid.rows.length);
  const cuts = new Array<Cut[] | undefined>(laid.rows.length);
  /** By strand: the row it knitted last, and the needle it stopped at. */
  const lastRow: number[] = [];
  const stoppedAt: Slot[] = [];
  const use = (strand: number, row: LaidRow, index: number, span: Run): void => {
    const near = nearEnd(row, span);
    const before = lastRow[strand];
    const goes = before !== undefined && (strand !== MAIN_STRAND || before < index);
    const rows = goes ? index + 1 - before : 0;
    if (goes) {
      const from = stoppedAt[strand] as Slot;
      const stitches = Math.abs(near - from);
      const isFarUp = !isCarriedUp(gauges, before, index + 1);
      const isOver = !isFarUp && stitches > (even ?? longestBetween(floatLimit, gauges, before, index + 1));
      if (isFarUp || (isOver && isCutAside(before, index + 1))) {
        (cuts[before - 1] ??= []).push({
          strand: laid.strands[strand] as Cut['strand'],
          because: isFarUp ? 'far-up' : 'far-aside',
          toRow: index + 1,
          stitches,
          rows,
          mm: wayMm(gauges, 0, before, index + 1),
        });
      } else {
        (carries[before - 1] ??= []).push({
          strand: laid.strands[strand] as Carry['strand'],
          toRow: index + 1,
          first: Math.min(from, near) as Slot,
          last: Math.max(from, near) as Slot,
          stitches,
          rows,
          mm: wayMm(gauges, stitches, before, index + 1),
          isOver,
        });
      }
    }
    lastRow[strand] = index + 1;
    stoppedAt[strand] = near === span.first ? span.last : span.first;
  };
  laid.rows.forEach((row, index) => {
    if (row.isMainKnitted) use(MAIN_STRAND, row, index, row.edges);
    for (const run of row.strands) use(run.strand, row, index, run);
  });
  return { carries, cuts };
}

/** The end of a span that the carriage comes to first. */
function nearEnd(row: LaidRow, span: Run): Slot {
  return row.from === 'left' ? span.first : span.last;
}
