/**
 * What a remedy would do, as data.
 *
 * An intent names what is to be, not the values that stood in the piece when
 * it was found. What is looked for is found on a piece ({@link pieceAfter});
 * the change is made only when a person takes it, from the project of then
 * ({@link changeFor}), so what they changed meanwhile stays as it is.
 */
import { seamTaking, widened } from '../piece/index.ts';
import type { Change } from '../project/change.ts';
import { pieceIn, type KnitPiece } from '../project/piece-in.ts';
import type { ProjectAt } from '../project/project-at.ts';
import { looserSetting, narrowerSetting, ontoBedSetting } from './bed-settings.ts';
import { isRemedyIntent, remedySetting, type RemedyIntent } from './remedies/kinds.ts';
import { changeSetting, pieceWith, type Setting } from './setting.ts';

export type Intent =
  | RemedyIntent
  /** At least so many stitches go into the seam at each edge. */
  | { readonly code: 'seam-takes'; readonly left: number; readonly right: number }
  /** The piece goes where the bed holds it. */
  | { readonly code: 'onto-bed' }
  /** As wide on as many stitches as the bed has needles, at the looser gauge that asks for, in every size. */
  | { readonly code: 'knit-looser' }
  /** As many stitches fewer on every row as the bed lacks needles, and to where it holds them. */
  | { readonly code: 'narrow-to-bed' }
  /** So many stitches more on every row; negative for fewer. */
  | { readonly code: 'widen'; readonly by: number };

/**
 * The change that does what is intended, for the project as it is. Null where
 * there is nothing left to do, where it cannot be done any more, or where what
 * it names is gone.
 */
export function changeFor(project: ProjectAt, intent: Intent): Change | null {
  const setting = settingFor(pieceIn(project), intent);
  return setting && changeSetting(project, setting);
}

/** The piece as it would be with what is intended done; null where {@link changeFor} is. */
export function pieceAfter(piece: KnitPiece, intent: Intent): KnitPiece | null {
  const setting = settingFor(piece, intent);
  return setting && pieceWith(piece, setting);
}

/** What is to be set for it; null where there is nothing left to do, or what it names is gone. */
function settingFor(piece: KnitPiece, intent: Intent): Setting | null {
  if (isRemedyIntent(intent)) return remedySetting(piece, intent);
  switch (intent.code) {
    case 'seam-takes': {
      const short = (['left', 'right'] as const).filter((side) => piece.seamAllowance[side] < intent[side]);
      if (short.length === 0) return null;
      const seamAllowance = short.reduce(
        (taken, side) => seamTaking(taken, side, intent[side], null),
        piece.seamAllowance,
      );
      return { change: 'seam-allowance', piece: { seamAllowance } };
    }
    case 'onto-bed':
      return ontoBedSetting(piece);
    case 'knit-looser':
      return looserSetting(piece);
    case 'narrow-to-bed':
      return narrowerSetting(piece);
    case 'widen': {
      const shape = widened(piece.shape, intent.by);
      return shape && { change: 'match-seam', piece: { shape } };
    }
  }
}
