/** Needles to wrap before each row so that no gap opens beside the figure. */
import type { Slot } from '../bed/index.ts';
import { OUTSIDE, type Fabric } from '../fabric/index.ts';
import type { LaidRow, LaidStrands } from './floats.ts';
import { internSpans } from './interned.ts';
import type { Wrap } from './types.ts';

export interface WrapRules {
  /** Palette index of the main yarn. */
  readonly main: number;
  /** Whether a needle of a row (1-based) belongs to an all-over pattern. */
  readonly isAllOver: (row: number, needle: Slot) => boolean;
  /** Stitches at the edges of each row that the seam takes. */
  readonly seamAllowance: { readonly left: number; readonly right: number };
}

/**
 * The wraps before each row (index 0 is row 1; undefined where there are none):
 * for each contrast strand that knits in it, the needle next to its outermost
 * selected one, outward, on the carriage's side only. Nothing is wrapped where
 * that needle is not on the piece (the contrast is bound in at the edge, as
 * with end-needle selection) or knits a contrast yarn, nor beside an all-over
 * pattern. Nor on a needle that came to work before the very row, whose loop is
 * not knitted yet, or that the seam takes, where no gap is seen.
 */
export function wrapsOf(fabric: Fabric, laid: LaidStrands, rules: WrapRules): (Wrap[] | undefined)[] {
  const onRow = wrapsOn(fabric, laid, rules);
  return laid.rows.map((_, index) => onRow(index));
}

/** What `wrapsOf` gives, from what it gave before the rows of `painted` (1-based) were laid again; the same value where these have none and had none. */
export function wrapsAgain(
  fabric: Fabric,
  laid: LaidStrands,
  rules: WrapRules,
  before: readonly (Wrap[] | undefined)[],
  painted: readonly number[],
): readonly (Wrap[] | undefined)[] {
  const onRow = wrapsOn(fabric, laid, rules);
  let wraps: (Wrap[] | undefined)[] | null = null;
  for (const row of painted) {
    const now = onRow(row - 1);
    if (now || before[row - 1]) (wraps ??= before.slice())[row - 1] = now;
  }
  return wraps ?? before;
}

/** The wraps before a row (from 0). */
function wrapsOn(
  fabric: Fabric,
  laid: LaidStrands,
  { main, isAllOver, seamAllowance }: WrapRules,
): (index: number) => Wrap[] | undefined {
  const make = laid.strands.map((strand) => ({
    left: internSpans((needle): Wrap => ({ needle: (fabric.first + needle) as Slot, edge: 'left', strand })),
    right: internSpans((needle): Wrap => ({ needle: (fabric.first + needle) as Slot, edge: 'right', strand })),
  }));
  return (index) => {
    const { from, edges, strands } = laid.rows[index] as LaidRow;
    const before = laid.rows[index - 1]?.edges ?? edges;
    let wraps: Wrap[] | undefined;
    for (const { strand, first, last } of strands) {
      const needle = from === 'left' ? first - 1 : last + 1;
      if (needle < edges.first + seamAllowance.left || needle > edges.last - seamAllowance.right) continue;
      if (needle < before.first || needle > before.last) continue;
      if (isAllOver(index + 1, from === 'left' ? first : last)) continue;
      const column = needle - fabric.first;
      const yarn = fabric.cells[index * fabric.width + column] ?? OUTSIDE;
      if (yarn !== main) continue;
      (wraps ??= []).push((make[strand] as (typeof make)[number])[from](column, column));
    }
    return wraps;
  };
}
