/** What a knitter must do at two rows of a folded hem: where it folds, and where it is joined. */
import type { PlacedBand } from '../fabric/index.ts';
import type { Hem, SectionSpan, Turning } from '../piece/index.ts';

export type HemNote =
  /** The hem folds after this row, or along it where it is a turning row, knitted looser. */
  | { readonly code: 'fold'; readonly turning: Turning }
  | {
      /** The last row of the hem: the cast-on loops are hung on their needles after it. */
      readonly code: 'join';
      /** The piece ends with its hem. */
      readonly isLast: boolean;
      /** The needles of the next row are selected by then. */
      readonly isNextSelected: boolean;
    };

export interface HemRow {
  readonly row: number;
  readonly note: HemNote;
}

/** The rows of a hem that ask for something, from the bottom up; none where nothing folds. */
export function hemRowsOf(
  hem: Hem,
  sections: readonly SectionSpan[],
  patterns: readonly Pick<PlacedBand, 'firstRow' | 'lastRow'>[],
): HemRow[] {
  const back = sections.find(({ name }) => name === 'hem-back');
  const front = sections.find(({ name }) => name === 'hem-front');
  if (!back || !front) return [];
  const next = front.last + 1;
  const isNextSelected = patterns.some(({ firstRow, lastRow }) => firstRow <= next && next <= lastRow);
  return [
    { row: back.last, note: { code: 'fold', turning: hem.turning } },
    { row: front.last, note: { code: 'join', isLast: sections.at(-1) === front, isNextSelected } },
  ];
}
