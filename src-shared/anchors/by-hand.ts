/** Cells that a person forbids or wants: on the chart of a motif, and on the needles. */
import { modulo } from '../grid/index.ts';
import type { Slot } from '../bed/index.ts';
import { runOn, tierOf, type PlacedCopies, type PlacedPattern } from '../fabric/index.ts';
import type { MotifId } from '../motif/index.ts';
import { copiesOf, type AnchorByHand, type AnchorWish } from '../pattern/index.ts';
import type { Outline } from '../piece/index.ts';

/** A cell on the chart of a motif, or beside it. */
export type ChartCell = Pick<AnchorByHand, 'column' | 'row'> & { readonly motif: MotifId };

/**
 * The cell of a chart that a needle knits in a row (1-based) of a pattern:
 * that of the copy there, else counted on from the group at its left, or where
 * there is none from the one at its right. Null where no copy stands on the row.
 */
export function chartCellAt(pattern: PlacedPattern, outline: Outline, row: number, needle: Slot): ChartCell | null {
  let nearest: { readonly place: PlacedCopies; readonly column: number; readonly rank: number } | null = null;
  for (const place of copiesOf(pattern)) {
    const run = row < place.firstRow || row > place.lastRow ? null : runOn(place, outline, row);
    if (!run) continue;
    const { width } = place.copy;
    const { first, last } = place.block ?? run;
    const found =
      needle < first
        ? { column: needle - first, rank: 1e6 + first - needle }
        : needle > last
          ? { column: width + needle - last - 1, rank: needle - last }
          : { column: modulo(needle - tierOf(place, row).origin, width), rank: 0 };
    if (!nearest || found.rank < nearest.rank) nearest = { place, ...found };
  }
  if (!nearest) return null;
  const { place, column } = nearest;
  const { copyRow } = tierOf(place, row);
  return { motif: place.motif, column: drawnColumn(place, column), row: copyRow };
}

/** As drawn or on the needles, each from the other. */
function drawnColumn({ isMirrored, copy }: PlacedCopies, column: number): number {
  return isMirrored ? copy.width - 1 - column : column;
}

/** The wish with a cell forbidden or wanted; said once more, nothing is said of it. */
export function sayingOf(wish: AnchorWish, cell: ChartCell, is: AnchorByHand['is']): AnchorWish {
  const isCell = (said: AnchorByHand): boolean =>
    said.motif === cell.motif && said.column === cell.column && said.row === cell.row;
  const wasSaid = wish.byHand.some((said) => isCell(said) && said.is === is);
  const others = wish.byHand.filter((said) => !isCell(said));
  return { ...wish, byHand: wasSaid ? others : [...others, { ...cell, is }] };
}

/** What a person says of the needles of a run on a row, by needle; those of which nothing is said are missing. */
export function saidOfNeedles(
  { byHand }: AnchorWish,
  pattern: PlacedPattern,
  outline: Outline,
  row: number,
  first: number,
  last: number,
): ReadonlyMap<number, AnchorByHand['is']> {
  const motifs = new Set(copiesOf(pattern).map(({ motif }) => motif));
  if (!byHand.some(({ motif }) => motifs.has(motif))) return NOTHING;
  const said = new Map<number, AnchorByHand['is']>();
  for (let needle = first; needle <= last; needle++) {
    const cell = chartCellAt(pattern, outline, row, needle as Slot);
    const found =
      cell &&
      byHand.find(({ motif, column, row: r }) => motif === cell.motif && column === cell.column && r === cell.row);
    if (found) said.set(needle, found.is);
  }
  return said;
}

const NOTHING: ReadonlyMap<number, AnchorByHand['is']> = new Map();
