/** The strands of what is pointed at: the row of a stitch, the group that is chosen, the finding that was gone to. */
import type { FindingPlace } from '@shared/check/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import type { PlanRow } from '@shared/plan/index.ts';
import type { Float } from '@shared/strands/index.ts';
import type { Size } from '../../canvas/index.ts';
import type { Strand } from '../../canvas/strands.ts';
import { strandsIn, strandsOf } from './floats.ts';
import type { LaidView } from './laid-view.ts';

export interface PointedAt {
  readonly row: number | null;
  readonly group: PlacedGroup | null;
  /** Where floats were found too long. */
  readonly places: readonly FindingPlace[];
}

/** All strands of the row, those that touch the group, and those over the limit in the places. */
export function pointedStrands(
  rows: readonly PlanRow[],
  laid: LaidView,
  { width, height }: Size,
  { row, group, places }: PointedAt,
): Strand[] {
  const ofRow =
    row === null ? [] : (rows[row - 1]?.floats ?? []).flatMap((float) => strandsOf(float, row, laid.at(row)));
  const within = (first: number, last: number, isMeant: (float: Float) => boolean): Strand[] =>
    laid.parts.flatMap((part) => {
      const span = { first: Math.max(first, part.first), last: Math.min(last, part.last) };
      if (span.first > span.last) return [];
      // Those of the row are there already.
      return strandsIn(rows, part.view, width, height, span).filter(
        (strand) => strand.row !== row && isMeant(strand.float),
      );
    });
  const ofGroup = group
    ? within(group.firstRow, group.lastRow, ({ first, last }) => last >= group.block.first && first <= group.block.last)
    : [];
  const ofPlaces = places.flatMap(({ rows: [first, last], needles }) =>
    within(first, last, (float) => {
      if (!float.isOver) return false;
      return needles === null || (float.last >= needles.first && float.first <= needles.last);
    }),
  );
  return [...ofRow, ...ofGroup, ...ofPlaces];
}
