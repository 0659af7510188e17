/** Fills put on their rows and needles. */
import type { Run, Slot } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { KnitFill, KnitPiece } from '../project/index.ts';
import { copyOnNeedles, type Copy } from './copy.ts';
import { copiesOfFill } from './fill-copies.ts';
import { fillRun } from './fill-place.ts';
import { setUpBefore } from './set-up.ts';
import type { FillPlace, MotifExtent, PlacedFill } from './types.ts';

/**
 * Puts one fill on the piece. Throws `no-figure`, `rows-outside-piece`,
 * `fill-rows-turned`, and `fill-without-room` if its border covers every row.
 */
export function placeFill(
  piece: KnitPiece,
  index: number,
  outline: Outline,
  extents: ReadonlyMap<MotifId, MotifExtent>,
): PlacedFill {
  const fill = piece.fills[index] as KnitFill;
  const copy = copyOfFill(piece, fill, extents.get(fill.motif.id) as MotifExtent);
  const { firstRow, border, shift, step } = fill;
  const lastRow = fill.lastRow ?? Math.max(firstRow, outline.rows);
  if (lastRow < firstRow) throw problemError('fill-rows-turned', { fill: index + 1, first: firstRow, last: lastRow });
  if (lastRow > outline.rows) {
    throw problemError('rows-outside-piece', { first: firstRow, last: lastRow, rows: outline.rows });
  }
  const centred = centredOrigin(edgesAt(outline, firstRow), piece.seamAllowance, copy.grid.width, fill.centre);
  const place: FillPlace = {
    fill: index,
    motif: fill.motif.id,
    copy: copy.grid,
    ground: copy.ground,
    isMirrored: copy.isMirrored,
    firstRow,
    lastRow,
    setUpAt: setUpBefore(firstRow, piece.machine),
    border,
    seamAllowance: piece.seamAllowance,
    origin: (centred.origin + shift) as Slot,
    step,
    isHalfOff: centred.isHalfOff,
  };
  if (!hasRoom(place, outline)) throw problemError('fill-without-room', { fill: index + 1 });
  return { ...place, copies: copiesOfFill(place, outline, fill.cutCopies) };
}

/** A repeat is taken up as well as across, so that a chart drawn with the beginning of another repeat still tiles. */
function copyOfFill(piece: KnitPiece, { motif, unit, isMirrored }: KnitFill, extent: MotifExtent): Copy {
  const height = unit === 'repeat' ? extent.repeat.height : extent.height;
  return copyOnNeedles(motif, { ...extent, height }, unit, piece, isMirrored);
}

/**
 * The leftmost needle of a copy that stands as `centre` asks in the middle of
 * the stitches that the seam leaves. In half stitches the middle is
 * left + right + 1, as needle n lies between n and n + 1.
 */
function centredOrigin(
  edges: Run,
  seamAllowance: FillPlace['seamAllowance'],
  width: number,
  centre: KnitFill['centre'],
): { origin: number; isHalfOff: boolean } {
  const middle = edges.first + seamAllowance.left + (edges.last - seamAllowance.right) + 1;
  const doubled = centre === 'column' ? middle - width : middle;
  return { origin: Math.floor(doubled / 2), isHalfOff: doubled % 2 !== 0 };
}

function hasRoom(place: FillPlace, outline: Outline): boolean {
  for (let row = place.firstRow; row <= place.lastRow; row++) if (fillRun(place, outline, row)) return true;
  return false;
}
