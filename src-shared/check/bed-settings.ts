/** How a piece comes to fit the bed, as settings. */
import { needlesOf, widthOf } from '../bed/index.ts';
import {
  beyondBed,
  GAUGE_BOUNDS,
  moveOntoBed,
  needlesTaken,
  outlineOf,
  scaledAcross,
  widened,
  type Piece,
  type Shape,
} from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import type { KnitPiece } from '../project/piece-in.ts';
import { looserFabric } from './coarser-bed.ts';
import type { Setting } from './setting.ts';

/** What moves the piece to where the bed holds it; null where it stands there, or is too wide. */
export function ontoBedSetting(piece: KnitPiece): Setting | null {
  const needles = needlesToBed(piece);
  return needles === null ? null : { change: 'piece-details', piece: { offset: piece.offset + needles } };
}

/** What takes as many stitches off every row as the bed lacks needles; null where it lacks none. */
export function narrowerSetting(piece: KnitPiece): Setting | null {
  const taken = takenBeyond(piece);
  if (taken === null) return null;
  const to = ontoBed(piece, { shape: widened(piece.shape, taken.needles - taken.stitches) });
  return to && { change: 'piece-size', piece: to };
}

/** What makes the piece fit at a looser gauge; null where hem or sections have gauges of their own, which would stay. */
export function looserSetting(piece: KnitPiece): Setting | null {
  const taken = takenBeyond(piece);
  const hasOwnGauges = piece.hem.gauge !== null || piece.sections.some(({ gauge }) => gauge !== null);
  if (taken === null || hasOwnGauges) return null;
  const { inTenCm } = looserFabric(taken.stitches, piece.gauge, taken.needles);
  if (inTenCm < GAUGE_BOUNDS.stitches.least) return null;
  const ratio = inTenCm / piece.gauge.stitches;
  const to = ontoBed(piece, { shape: scaledAcross(piece.shape, ratio) });
  const gauge = { ...piece.gauge, stitches: inTenCm };
  return to && { change: 'gauge', widthsTimes: ratio, piece: { ...to, gauge } };
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
