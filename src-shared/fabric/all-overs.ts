/** All-overs: their copies tile the rows. */
import type { Run, Slot } from '../bed/index.ts';
import { edgesAt, rowsOfExtent, type Outline } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import type { KnitAllOver, KnitPiece } from '../project/index.ts';
import { copyOnNeedles, type Copy } from './copy.ts';
import { clippingOf } from './clipped-copies.ts';
import { runOn } from './copies.ts';
import type { PaintedCopies } from './painted.ts';
import { setUpBefore } from './set-up.ts';
import type { CopiesPlace, MotifExtent, PlacedAllOver, PlacedPatterns } from './types.ts';

/**
 * Puts one all-over on the piece. Throws what `rowsOfExtent` throws,
 * `no-figure`, `rows-outside-piece`, `fill-rows-turned` if its last row comes
 * out below its first, and `fill-without-room` if its border covers every row.
 * `before`: its copies before their motif was painted.
 */
export function placeAllOver(
  piece: KnitPiece,
  allOver: KnitAllOver,
  number: number,
  { outline, sections, extents }: Pick<PlacedPatterns, 'outline' | 'sections' | 'extents'>,
  before: PaintedCopies | null = null,
): PlacedAllOver {
  const { motif, position, border, shift, step, centre, cutCopies, colourOrder } = allOver;
  const {
    grid: copy,
    ground,
    isMirrored,
  } = copyOfAllOver(piece, allOver, extents.get(motif.id) as MotifExtent, before);
  const { first: firstRow, last: lastRow } = rowsOfExtent(position, sections);
  const highest = Math.max(firstRow, lastRow);
  if (highest > outline.rows) {
    throw problemError('rows-outside-piece', { first: firstRow, last: highest, rows: outline.rows });
  }
  if (lastRow < firstRow) {
    throw problemError('fill-rows-turned', { allOver: number + 1, first: firstRow, last: lastRow });
  }
  const { seamAllowance } = piece;
  const { origin, isHalfOff } = centredOrigin(edgesAt(outline, firstRow), seamAllowance, copy.width, centre);
  const place: CopiesPlace = {
    motif: motif.id,
    copy,
    ground,
    isMirrored,
    firstRow,
    lastRow,
    origin: (origin + shift) as Slot,
    step,
    block: null,
    border,
    colours: colourOrder && { order: colourOrder, from: firstRow },
  };
  if (!hasRoom(place, outline)) throw problemError('fill-without-room', { allOver: number + 1 });
  const setUpAt = setUpBefore(firstRow, piece.machine);
  const clipping = clippingOf(place, null, outline, cutCopies, before);
  return { kind: 'all-over', number, ...place, ...clipping, setUpAt, seamAllowance, isHalfOff };
}

/** A repeat is taken up as well as across, so that a chart drawn with the beginning of another repeat still tiles. */
function copyOfAllOver(
  piece: KnitPiece,
  { motif, unit, isMirrored }: KnitAllOver,
  extent: MotifExtent,
  before: PaintedCopies | null,
): Copy {
  const height = unit === 'repeat' ? extent.repeat.height : extent.height;
  return copyOnNeedles(motif, { ...extent, height }, unit, piece, isMirrored, before);
}

/**
 * The leftmost needle of a copy that stands as `centre` asks in the middle of
 * the stitches that the seam leaves. In half stitches the middle is
 * left + right + 1, as needle n lies between n and n + 1.
 */
function centredOrigin(
  edges: Run,
  seamAllowance: KnitPiece['seamAllowance'],
  width: number,
  centre: KnitAllOver['centre'],
): { origin: number; isHalfOff: boolean } {
  const middle = edges.first + seamAllowance.left + (edges.last - seamAllowance.right) + 1;
  const doubled = centre === 'column' ? middle - width : middle;
  return { origin: Math.floor(doubled / 2), isHalfOff: doubled % 2 !== 0 };
}

function hasRoom(place: CopiesPlace, outline: Outline): boolean {
  for (let row = place.firstRow; row <= place.lastRow; row++) if (runOn(place, outline, row)) return true;
  return false;
}
