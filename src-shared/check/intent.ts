/**
 * What a remedy would do, as data.
 *
 * An intent names what is to be, not the values that stood in the piece when
 * it was found. What is looked for is found on a piece ({@link pieceAfter});
 * the change is made only when a person takes it, from the project of then
 * ({@link changeFor}), so what they changed meanwhile stays as it is.
 */
import { needlesOf } from '../bed/index.ts';
import { bandsOf, namesOf, type Group, type Pattern } from '../pattern/index.ts';
import { beyondBed, moveOntoBed, outlineOf, seamTaking, widened, type Piece } from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import { changeOf, type Change, type ChangeName } from '../project/change.ts';
import { setPattern, setPiece } from '../project/edit-makers.ts';
import { pieceIn, type KnitPiece } from '../project/piece-in.ts';
import type { ProjectAt } from '../project/project-at.ts';

export type Intent =
  /** A ball of contrast for each group of a band. */
  | { readonly code: 'own-balls'; readonly band: number }
  | { readonly code: 'lining' }
  | { readonly code: 'end-needles-off' }
  /** One stitch goes into the seam at each edge at which none does. */
  | { readonly code: 'seam-stitch' }
  /** The piece goes where the bed holds it. */
  | { readonly code: 'onto-bed' }
  /** So many stitches more on every row; negative for fewer. */
  | { readonly code: 'widen'; readonly by: number };

/** The values that an intent gives to the piece, to every group of a band, or to every pattern. */
type Setting = { readonly change: ChangeName } & (
  | { readonly of: 'piece'; readonly to: Partial<Piece> }
  | { readonly of: 'groups'; readonly band: number; readonly to: Pick<Group, 'hasOwnBall'> }
  | { readonly of: 'patterns'; readonly to: Pick<Pattern, 'endNeedles'> }
);

/**
 * The change that does what is intended, for the project as it is. Null where
 * there is nothing left to do, where it cannot be done any more, or where what
 * it names is gone.
 */
export function changeFor(project: ProjectAt, intent: Intent): Change | null {
  const setting = settingFor(pieceIn(project), intent);
  switch (setting?.of) {
    case undefined:
      return null;
    case 'piece':
      return changeOf(setting.change, ...setPiece(project, setting.to));
    case 'groups': {
      const groups = bandsOf(project)[setting.band]?.groups.map((group) => ({ ...group, ...setting.to })) ?? [];
      return changeOf(setting.change, setPattern(project, 'band', setting.band, { groups }));
    }
    case 'patterns': {
      const edits = namesOf(project.patterns).map(({ kind, number }) => setPattern(project, kind, number, setting.to));
      const [first, ...others] = edits;
      return first ? changeOf(setting.change, first, ...others) : null;
    }
  }
}

/** The piece as it would be with what is intended done; null where {@link changeFor} is. */
export function pieceAfter(piece: KnitPiece, intent: Intent): KnitPiece | null {
  const setting = settingFor(piece, intent);
  switch (setting?.of) {
    case undefined:
      return null;
    case 'piece':
      return { ...piece, ...setting.to };
    case 'groups': {
      const band = bandsOf(piece)[setting.band];
      if (!band) return null;
      const own = { ...band, groups: band.groups.map((group) => ({ ...group, ...setting.to })) };
      return { ...piece, patterns: piece.patterns.with(piece.patterns.indexOf(band), own) };
    }
    case 'patterns':
      return { ...piece, patterns: piece.patterns.map((pattern) => ({ ...pattern, ...setting.to })) };
  }
}

/** What is to be set for it; null where there is nothing left to do, or what it names is gone. */
function settingFor(piece: KnitPiece, intent: Intent): Setting | null {
  switch (intent.code) {
    case 'own-balls': {
      const { groups } = bandsOf(piece)[intent.band] ?? { groups: [] };
      if (groups.every(({ hasOwnBall }) => hasOwnBall)) return null;
      return { change: 'own-balls', of: 'groups', band: intent.band, to: { hasOwnBall: true } };
    }
    case 'lining':
      return piece.isLined ? null : { change: 'piece-details', of: 'piece', to: { isLined: true } };
    case 'end-needles-off':
      if (piece.machine.endNeedles !== 'switch') return null;
      if (!piece.patterns.some(({ endNeedles }) => endNeedles)) return null;
      return { change: 'end-needles', of: 'patterns', to: { endNeedles: false } };
    case 'seam-stitch': {
      const open = (['left', 'right'] as const).filter((side) => piece.seamAllowance[side] === 0);
      if (open.length === 0) return null;
      const seamAllowance = open.reduce((taken, side) => seamTaking(taken, side, 1, null), piece.seamAllowance);
      return { change: 'seam-allowance', of: 'piece', to: { seamAllowance } };
    }
    case 'onto-bed': {
      const needles = needlesToBed(piece);
      if (needles === null) return null;
      return { change: 'piece-details', of: 'piece', to: { offset: piece.offset + needles } };
    }
    case 'widen': {
      const shape = widened(piece.shape, intent.by);
      return shape && { change: 'match-seam', of: 'piece', to: { shape } };
    }
  }
}

/** How many needles to the right the piece goes to stand on the bed; null where it does already, or is too wide. */
function needlesToBed(piece: KnitPiece): number | null {
  const { shape, machine, offset } = piece;
  const { bed } = machine;
  const outline = outcome(() => outlineOf(shape, piece));
  if (bed.needles === null || !outline.ok) return null;
  const there = needlesOf(bed.needles);
  return beyondBed(outline.value, there) === null ? null : moveOntoBed(outline.value, offset, there);
}
