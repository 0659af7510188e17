/**
 * What a remedy would do, as data.
 *
 * An intent names what is to be, not the values that stood in the project when
 * it was found. The change is made of it only when a person takes it, from the
 * project of then, so what they changed meanwhile stays as it is.
 */
import { needlesOf } from '../bed/index.ts';
import { beyondBed, moveOntoBed, outlineOf, widened, type Piece } from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import { changeOf, type Change } from '../project/change.ts';
import { setBand, setPiece } from '../project/edit-makers.ts';
import type { Project } from '../project/index.ts';

export type Intent =
  /** A ball of contrast for each group of a band. */
  | { readonly code: 'own-balls'; readonly band: number }
  | { readonly code: 'lining' }
  | { readonly code: 'end-needles-off' }
  /** The piece goes where the bed holds it. */
  | { readonly code: 'onto-bed' }
  /** So many stitches more on every row; negative for fewer. */
  | { readonly code: 'widen'; readonly by: number };

/**
 * The change that does what is intended, for the project as it is. Null where
 * there is nothing left to do, where it cannot be done any more, or where what
 * it names is gone.
 */
export function changeFor(project: Project, intent: Intent): Change | null {
  const { piece, bands } = project;
  switch (intent.code) {
    case 'own-balls': {
      const { groups } = bands[intent.band] ?? { groups: [] };
      if (groups.every(({ hasOwnBall }) => hasOwnBall)) return null;
      const to = { groups: groups.map((group) => ({ ...group, hasOwnBall: true })) };
      return changeOf('own-balls', setBand(intent.band, to));
    }
    case 'lining':
      return piece.isLined ? null : changeOf('piece-details', setPiece({ isLined: true }));
    case 'end-needles-off':
      return piece.endNeedleSelection ? changeOf('end-needles', setPiece({ endNeedleSelection: false })) : null;
    case 'onto-bed': {
      const needles = needlesToBed(piece);
      if (needles === null) return null;
      return changeOf('piece-details', setPiece({ offset: piece.offset + needles }));
    }
    case 'widen': {
      const shape = widened(piece.shape, intent.by);
      return shape && changeOf('match-seam', setPiece({ shape }));
    }
  }
}

/** How many needles to the right the piece goes to stand on the bed; null where it does already, or is too wide. */
function needlesToBed(piece: Piece): number | null {
  const { shape, bed, offset } = piece;
  const outline = outcome(() => outlineOf(shape, piece));
  if (bed.needles === null || !outline.ok) return null;
  const there = needlesOf(bed.needles);
  return beyondBed(outline.value, there) === null ? null : moveOntoBed(outline.value, offset, there);
}
