/**
 * Which way round a chart lies on the needles.
 *
 * On a single bed the purl side faces the knitter, so the knit side is seen
 * mirrored. This is the one place that knows it; nothing else mirrors.
 */
import type { FinishedFace, Shows, Side } from './model.ts';
import type { Slot } from './slot.ts';

/** The side of the fabric that a chart is drawn from: its knitter faces the purl side. */
export function drawnFrom(shows: Shows, face: FinishedFace): FinishedFace {
  return shows === 'worn' ? face : 'purl';
}

/** True if column 0 as drawn lies on the rightmost needle of a copy. */
export function isMirroredOnNeedles(shows: Shows, face: FinishedFace): boolean {
  return shows === 'worn' && face === 'knit';
}

/**
 * True if what reads from left to right on the chart is seen from right to left
 * when worn: letters would come out mirrored.
 */
export function isMirroredWhenWorn(shows: Shows, face: FinishedFace): boolean {
  return shows === 'needles' && face === 'knit';
}

/**
 * The needle of chart column `column` in a copy `width` columns wide whose
 * leftmost needle is `first`: `first + column`, or mirrored
 * `first + (width - 1 - column)`.
 */
export function needleOfColumn(column: number, width: number, first: Slot, mirrored: boolean): Slot {
  return (first + (mirrored ? width - 1 - column : column)) as Slot;
}

/** Inverse of {@link needleOfColumn}. */
export function columnOfNeedle(needle: Slot, width: number, first: Slot, mirrored: boolean): number {
  const offset = needle - first;
  return mirrored ? width - 1 - offset : offset;
}

export function opposite(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}

/** The carriage's side before `row` (1-based): `startSide` for odd rows. */
export function carriageSide(row: number, startSide: Side): Side {
  return row % 2 === 1 ? startSide : opposite(startSide);
}
