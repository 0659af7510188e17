/**
 * What a remedy would do, as data.
 *
 * An intent names what is to be, not the values that stood in the piece when
 * it was found. What is looked for is found on a piece ({@link pieceAfter});
 * the change is made only when a person takes it, from the project of then
 * ({@link changeFor}), so what they changed meanwhile stays as it is.
 */
import { needlesOf, widthOf } from '../bed/index.ts';
import { bandsOf, namesOf, type Group, type Pattern } from '../pattern/index.ts';
import {
  beyondBed,
  GAUGE_BOUNDS,
  moveOntoBed,
  needlesTaken,
  outlineOf,
  scaledAcross,
  seamTaking,
  widened,
  type Piece,
  type Shape,
} from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import { changeOf, type Change, type ChangeName } from '../project/change.ts';
import { setNumbers, setPattern, setPiece } from '../project/edit-makers.ts';
import { pieceIn, type KnitPiece } from '../project/piece-in.ts';
import type { ProjectAt } from '../project/project-at.ts';
import { inSize } from '../project/sizes.ts';
import { looserFabric } from './coarser-bed.ts';

export type Intent =
  /** A ball of contrast for each group of a band. */
  | { readonly code: 'own-balls'; readonly band: number }
  | { readonly code: 'lining' }
  | { readonly code: 'end-needles-off' }
  /** One stitch goes into the seam at each edge at which none does. */
  | { readonly code: 'seam-stitch' }
  /** The piece goes where the bed holds it. */
  | { readonly code: 'onto-bed' }
  /** As wide on as many stitches as the bed has needles, at the looser gauge that asks for, in every size. */
  | { readonly code: 'knit-looser' }
  /** As many stitches fewer on every row as the bed lacks needles, and to where it holds them. */
  | { readonly code: 'narrow-to-bed' }
  /** So many stitches more on every row; negative for fewer. */
  | { readonly code: 'widen'; readonly by: number };

/** The values that an intent gives to the piece, to every group of a band, or to every pattern. */
type Setting = { readonly change: ChangeName } & (
  | { readonly of: 'piece'; readonly to: Partial<Piece> }
  /** `to` as for the piece, and every size's widths in stitches so many times as many. */
  | { readonly of: 'widths'; readonly ratio: number; readonly to: Partial<Piece> }
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
    case 'widths': {
      const others = project.whole.sizes.flatMap((_, index) => {
        const { at, piece } = inSize(project, index);
        const shape = at.size === project.at.size ? null : scaledAcross(piece.shape, setting.ratio);
        return shape ? [setNumbers(at, { shape })] : [];
      });
      return changeOf(setting.change, ...setPiece(project, setting.to), ...others);
    }
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
    case 'widths':
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
    case 'knit-looser':
      return looserSetting(piece);
    case 'narrow-to-bed': {
      const taken = takenBeyond(piece);
      if (taken === null) return null;
      const to = ontoBed(piece, { shape: widened(piece.shape, taken.needles - taken.stitches) });
      return to && { change: 'piece-size', of: 'piece', to };
    }
    case 'widen': {
      const shape = widened(piece.shape, intent.by);
      return shape && { change: 'match-seam', of: 'piece', to: { shape } };
    }
  }
}

/** What makes the piece fit at a looser gauge; null where hem or sections have gauges of their own, which would stay. */
function looserSetting(piece: KnitPiece): Setting | null {
  const taken = takenBeyond(piece);
  const hasOwnGauges = piece.hem.gauge !== null || piece.sections.some(({ gauge }) => gauge !== null);
  if (taken === null || hasOwnGauges) return null;
  const { inTenCm } = looserFabric(taken.stitches, piece.gauge, taken.needles);
  if (inTenCm < GAUGE_BOUNDS.stitches.least) return null;
  const ratio = inTenCm / piece.gauge.stitches;
  const to = ontoBed(piece, { shape: scaledAcross(piece.shape, ratio) });
  const gauge = { ...piece.gauge, stitches: inTenCm };
  return to && { change: 'gauge', of: 'widths', ratio, to: { ...to, gauge } };
}

/** The stitches that the piece takes and the needles that there are, where these are fewer; null where it fits or could. */
function takenBeyond(piece: KnitPiece): { readonly stitches: number; readonly needles: number } | null {
  const { needles } = piece.machine.bed;
  const outline = outcome(() => outlineOf(piece.shape, piece));
  if (needles === null || !outline.ok) return null;
  const stitches = widthOf(needlesTaken(outline.value));
  return stitches > needles ? { stitches, needles } : null;
}

/** The fields of a piece of another shape, moved where that leaves the bed; null where it is none, or too wide still. */
function ontoBed(piece: KnitPiece, { shape }: { readonly shape: Shape | null }): Partial<Piece> | null {
  if (!shape || takenBeyond({ ...piece, shape }) !== null) return null;
  const needles = needlesToBed({ ...piece, shape });
  return needles === null ? { shape } : { shape, offset: piece.offset + needles };
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
