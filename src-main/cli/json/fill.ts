/** A fill in the JSON of `plan`. */
import { label } from '@shared/bed/index.ts';
import { firstNeedlesOf } from '@shared/fabric/index.ts';
import type { Outline } from '@shared/piece/index.ts';
import type { Plan } from '@shared/plan/index.ts';

export interface FillJson {
  readonly firstRow: number;
  readonly lastRow: number;
  /** Where copies start on the first row. */
  readonly first: readonly string[];
  /** Stitches and rows of a copy. */
  readonly copy: readonly [stitches: number, rows: number];
  /** Stitches to the right by which each copy is moved against the one below it. */
  readonly step: number;
  readonly copies: { readonly whole: number; readonly cut: number; readonly leftOut: number };
}

export function fillJson(fill: Plan['fills'][number], outline: Outline): FillJson {
  const { firstRow, lastRow, copy, step, copies } = fill;
  const { whole, clipped, leftOut } = copies;
  return {
    firstRow,
    lastRow,
    first: firstNeedlesOf(fill, outline).map(label),
    copy: [copy.width, copy.height],
    step,
    copies: { whole, cut: clipped, leftOut },
  };
}
