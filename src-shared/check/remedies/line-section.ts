/** A lining behind one section alone. */
import type { KnitPiece } from '../../project/piece-in.ts';
import type { RemedyKind } from './kind.ts';
import { linedPlan } from './lined-plan.ts';

export interface LineSection {
  readonly code: 'line-section';
  /** Among the sections above the hem, from 0. */
  readonly section: number;
}

export const lineSection: RemedyKind<LineSection> = {
  keepsPlaces: true,
  propose: ({ piece, gathered: { all } }) =>
    spansOf(piece).flatMap(({ section, first, last }) =>
      all.some(({ rows }) => rows[0] <= last && first <= rows[1]) ? [{ code: 'line-section', section }] : [],
    ),
  setting: (piece, { section }) => {
    if (piece.isLined || piece.sections[section]?.isLined !== false) return null;
    const sections = piece.sections.map((each, index) => (index === section ? { ...each, isLined: true } : each));
    return { change: 'section-lining', piece: { sections } };
  },
  planAfter: linedPlan,
};

/** The rows of the sections that are not lined yet. */
function spansOf(piece: KnitPiece): { readonly section: number; readonly first: number; readonly last: number }[] {
  if (piece.isLined) return [];
  let first = piece.hemRows + 1;
  return piece.sections.flatMap(({ rows, isLined }, section) => {
    const span = { section, first, last: first + rows - 1 };
    first += rows;
    return isLined ? [] : [span];
  });
}
