/**
 * A picture to trace as it is seen: its corners, and what dragging one of them
 * or turning it makes of its size, place and turn. Pure.
 *
 * It is turned as the knitting is seen in its own proportion. Where cells are
 * shown in another one, the turned picture is stretched with them.
 */
import type { Underlay } from '@shared/motif/index.ts';
import type { Point, Viewport } from '../../canvas/index.ts';
import type { Middle } from './placing.ts';

/** How a picture is seen; `aspect`: how many times as wide as tall a knitted cell is. */
export interface SeenBy {
  readonly view: Viewport;
  readonly aspect: number;
}

type Placed = Pick<Underlay, 'left' | 'bottom' | 'columns' | 'rows' | 'turn'>;

/** From its middle, in halves of its width and height: right and down. The upper left, the upper right, the lower right, the lower left. */
export const CORNERS = [
  { across: -1, down: -1 },
  { across: 1, down: -1 },
  { across: 1, down: 1 },
  { across: -1, down: 1 },
] as const;

/** Pixels from the upper edge of a picture to the handle that turns it. */
const TURN_AWAY = 36;

/** The middle of the picture, in pixels of the view. */
export function middleOf(placed: Placed, { view }: SeenBy): Point {
  const { column, row } = centre(placed);
  return { x: view.x + column * view.cellWidth, y: view.y - row * view.cellHeight };
}

function centre({ left, bottom, columns, rows }: Placed): Middle {
  return { column: left + columns / 2, row: bottom + rows / 2 };
}

/** How many times as wide as it is knitted a cell is shown. */
export function stretchOf({ view, aspect }: SeenBy): number {
  return view.aspect / aspect;
}

/** A corner of the picture, in pixels of the view. */
export function cornerSeen(placed: Placed, corner: number, seen: SeenBy): Point {
  const { across, down } = CORNERS[corner] ?? CORNERS[0];
  return seenAt(placed, seen, half(placed, seen), across, down);
}

/** Where the handle that turns the picture stands: over the middle of its upper edge, as it is turned. */
export function turnHandleSeen(placed: Placed, seen: SeenBy): Point {
  const size = half(placed, seen);
  return seenAt(placed, seen, size, 0, -1 - TURN_AWAY / size.y);
}

/** Half the size of the picture in pixels, before it is turned and stretched. */
function half({ columns, rows }: Placed, seen: SeenBy): Point {
  const { view } = seen;
  return { x: (columns * view.cellWidth) / 2 / stretchOf(seen), y: (rows * view.cellHeight) / 2 };
}

function seenAt(placed: Placed, seen: SeenBy, size: Point, across: number, down: number): Point {
  const middle = middleOf(placed, seen);
  const turned = turnedBy({ x: across * size.x, y: down * size.y }, placed.turn);
  return { x: middle.x + turned.x * stretchOf(seen), y: middle.y + turned.y };
}

/** Turned clockwise about the origin; y runs downwards. */
function turnedBy({ x, y }: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return { x: x * Math.cos(angle) - y * Math.sin(angle), y: x * Math.sin(angle) + y * Math.cos(angle) };
}

/** Never smaller than this share of itself in one drag: it stays in hand. */
const LEAST_FACTOR = 0.02;

/**
 * The size and middle of the picture with a corner dragged by so many pixels:
 * as large as brings the corner nearest to there without pulling the picture
 * out of shape, the opposite corner staying where it is.
 */
export function scaledTo(
  placed: Placed,
  corner: number,
  by: Point,
  seen: SeenBy,
): { readonly columns: number; readonly rows: number; readonly middle: Middle } {
  const from = cornerSeen(placed, corner, seen);
  const fixed = cornerSeen(placed, (corner + 2) % 4, seen);
  const diagonal = { x: from.x - fixed.x, y: from.y - fixed.y };
  const wanted = { x: diagonal.x + by.x, y: diagonal.y + by.y };
  const along = (wanted.x * diagonal.x + wanted.y * diagonal.y) / (diagonal.x ** 2 + diagonal.y ** 2);
  // As far as both sides keep at least one cell.
  const factor = Math.max(along, LEAST_FACTOR, 1 / placed.columns, 1 / placed.rows);
  const { view } = seen;
  return {
    columns: placed.columns * factor,
    rows: placed.rows * factor,
    middle: {
      column: (fixed.x + (diagonal.x * factor) / 2 - view.x) / view.cellWidth,
      row: (view.y - fixed.y - (diagonal.y * factor) / 2) / view.cellHeight,
    },
  };
}

/** Angles that are often meant, in degrees, and how near to one a drag comes to it. */
const EVEN = { every: 15, near: 0.7 };

/** The turn of the picture whose turning handle is dragged by so many pixels: to a tenth of a degree, or to an even angle close by. */
export function turnedTo(placed: Placed, by: Point, seen: SeenBy): number {
  const middle = middleOf(placed, seen);
  const from = turnHandleSeen(placed, seen);
  const angle = (at: Point): number => Math.atan2((at.x - middle.x) / stretchOf(seen), middle.y - at.y);
  const turned = placed.turn + ((angle({ x: from.x + by.x, y: from.y + by.y }) - angle(from)) * 180) / Math.PI;
  const even = Math.round(turned / EVEN.every) * EVEN.every;
  return Math.abs(turned - even) <= EVEN.near ? even : Math.round(turned * 10) / 10;
}
