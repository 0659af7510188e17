/** Where the arrow keys take the stitch that is looked at. */
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import type { StitchSpot } from '../stitch-spot.ts';

/** Rows that Page Up and Page Down go. */
const PAGE = 10;

/**
 * The spot after a key, kept on the piece (no wrapping round); null for a key
 * that does not move it. Up is up the piece; left and right are as seen, so
 * that on a turned piece they change places.
 */
export function spotAfterKey(
  spot: StitchSpot,
  key: { readonly key: string; readonly ctrlKey: boolean },
  outline: Outline,
  isTurned = false,
): StitchSpot | null {
  const step = isTurned ? -1 : 1;
  const edges = edgesAt(outline, spot.row);
  switch (key.key) {
    case 'ArrowLeft':
      return onPiece({ ...spot, needle: spot.needle - step }, outline);
    case 'ArrowRight':
      return onPiece({ ...spot, needle: spot.needle + step }, outline);
    case 'ArrowUp':
      return onPiece({ ...spot, row: spot.row + 1 }, outline);
    case 'ArrowDown':
      return onPiece({ ...spot, row: spot.row - 1 }, outline);
    case 'PageUp':
      return onPiece({ ...spot, row: spot.row + PAGE }, outline);
    case 'PageDown':
      return onPiece({ ...spot, row: spot.row - PAGE }, outline);
    case 'Home':
      return key.ctrlKey
        ? onPiece({ needle: -Infinity * step, row: 1 }, outline)
        : { ...spot, needle: isTurned ? edges.last : edges.first };
    case 'End':
      return key.ctrlKey
        ? onPiece({ needle: Infinity * step, row: outline.rows }, outline)
        : { ...spot, needle: isTurned ? edges.first : edges.last };
    default:
      return null;
  }
}

/** The stitch of the piece nearest to a spot: its row first, then its needle. */
export function onPiece({ needle, row }: StitchSpot, outline: Outline): StitchSpot {
  const kept = Math.min(Math.max(row, 1), outline.rows);
  const { first, last } = edgesAt(outline, kept);
  return { row: kept, needle: Math.min(Math.max(needle, first), last) };
}
