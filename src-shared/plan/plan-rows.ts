/** Rows of a plan: each as it is laid, with what is done before and after it. */
import type { Slot } from '../bed/index.ts';
import type { EndNeedles } from '../fabric/index.ts';
import { sectionAt, type SectionSpan } from '../piece/index.ts';
import type { LaidRow, Mended, Ways, Wrap } from '../strands/index.ts';
import type { PlanRow } from './types.ts';

const NONE: readonly never[] = [];

/** What rows are put together from, by row: index 0 is row 1. */
export interface RowParts {
  readonly mended: Mended<LaidRow>;
  readonly sections: readonly SectionSpan[];
  readonly endNeedles: readonly (EndNeedles | undefined)[];
  readonly anchors: readonly (readonly Slot[] | undefined)[];
  readonly ways: Ways;
  readonly wraps: readonly (readonly Wrap[] | undefined)[];
}

/** All rows; or those of a plan `before`, with the rows of `changed` (1-based) made anew. */
export function planRows(
  parts: RowParts,
  before: { readonly rows: readonly PlanRow[]; readonly changed: readonly number[] } | null,
): PlanRow[] {
  if (!before) return parts.mended.rows.map((_, index) => planRow(parts, index));
  const rows = before.rows.slice();
  for (const row of before.changed) rows[row - 1] = planRow(parts, row - 1);
  return rows;
}

function planRow({ mended, sections, endNeedles, anchors, ways, wraps }: RowParts, index: number): PlanRow {
  const { from, edges, contrast, isMainKnitted, floats, isOver } = mended.rows[index] as LaidRow;
  return {
    row: index + 1,
    section: sectionAt(sections, index + 1).name,
    from,
    edges,
    contrast,
    isMainKnitted,
    endNeedles: endNeedles[index] ?? null,
    anchors: anchors[index] ?? NONE,
    wraps: wraps[index] ?? NONE,
    floats,
    isOver,
    carries: ways.carries[index] ?? NONE,
    cuts: ways.cuts[index] ?? NONE,
    lifts: mended.lifts[index] ?? NONE,
    chains: mended.chains[index] ?? NONE,
  };
}
