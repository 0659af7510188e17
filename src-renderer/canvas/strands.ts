/** How strands that float are shaped, and where the tags with their stitches stand. */
import type { Float } from '@shared/strands/index.ts';
import type { PixelBox } from './viewport.ts';

/** With more floats than this in view only the long ones carry tags. */
const MOST_TAGGED = 24;
export const TAG_HEIGHT = 20;
/** Tags of one stack stand at most this far apart. */
const MOST_APART = 80;

/** A strand in pixels, or the part of one that lies loose: from `x1` to `x2`, hanging down to `y + sag`. */
export interface Strand {
  readonly float: Float;
  readonly row: number;
  /** Of the part, in stitches, and whether that is too long. */
  readonly stitches: number;
  readonly isOver: boolean;
  readonly x1: number;
  readonly x2: number;
  /** In the middle of its row. */
  readonly y: number;
  /** Where it is hooked at either end: at `y`, or higher where a needle of the row above holds it. */
  readonly y1: number;
  readonly y2: number;
  readonly sag: number;
}

export const MOST_SAG = 22;

/** How far a strand `width` pixels long hangs down; a short one stays within its row. */
export function sagOf(width: number, rowHeight: number): number {
  return Math.min(MOST_SAG, Math.max(width * 0.09, Math.min(rowHeight * 0.3, width * 0.2)));
}

/**
 * Thickness of a strand in pixels: heavier the longer, and long ones always
 * heavier than any within the limit. Strands of neighbouring rows stay apart.
 */
export function thicknessOf(stitches: number, isOver: boolean, rowHeight: number): number {
  const room = Math.min(1, Math.max(0.5, rowHeight / 8));
  return room * (isOver ? Math.min(3.5, 2.2 + stitches / 25) : Math.min(1.6, 0.8 + stitches / 10));
}

/** A tag with the stitches of a float, its middle at (`x`, `y`). */
export interface Tag {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly isOver: boolean;
}

/** Where tags go: the longest strands first, and none over another or over what is `taken`. */
export function tagsOf(
  strands: readonly Strand[],
  widthOf: (text: string) => number,
  taken: readonly PixelBox[] = [],
  onTaken: 'left-out' | 'below' = 'left-out',
): Tag[] {
  const isCrowded = strands.length > MOST_TAGGED;
  const taggable = strands.filter(({ isOver, x1, x2 }) => (isOver || !isCrowded) && x2 - x1 >= 18);
  const wanted = longestInPlace(taggable, TAG_HEIGHT, TAG_HEIGHT / 2);
  const tags: Tag[] = [];
  for (const { stitches, isOver, x1, x2, y, sag } of wanted) {
    const text = String(stitches);
    const under = { text, x: (x1 + x2) / 2, y: y + sag, width: widthOf(text) + 14, isOver };
    const isOnTaken = taken.some((one) => meets(under, one));
    if (isOnTaken && onTaken === 'left-out') continue;
    const tag = isOnTaken ? below(under, taken) : under;
    // One tag speaks for a stack of strands: the wider they are, the more of them.
    const apart = Math.min(MOST_APART, Math.max(TAG_HEIGHT + 4, (x2 - x1) / 2));
    const isFree = tags.every(
      (other) => Math.abs(other.y - tag.y) >= apart || Math.abs(other.x - tag.x) >= (other.width + tag.width) / 2 + 4,
    );
    if (isFree) tags.push(tag);
  }
  return tags;
}

/** No strand that is drawn lies so many places up or down. */
const MOST_UP = 2 ** 20;

/** The longest strand of each place of `across` × `up` pixels, longest first: as many as fit, however many there are. */
export function longestInPlace(strands: readonly Strand[], across: number, up: number): Strand[] {
  const longest = new Map<number, Strand>();
  for (const strand of strands) {
    // In one number, of which more are made in a frame than texts can be.
    const place = Math.floor((strand.x1 + strand.x2) / 2 / across) * MOST_UP + Math.floor(strand.y / up);
    const there = longest.get(place);
    if (!there || strand.stitches > there.stitches) longest.set(place, strand);
  }
  return [...longest.values()].sort((one, other) => other.stitches - one.stitches || one.row - other.row);
}

/** Below what is in its way, and below what is in its way there. */
function below(tag: Tag, taken: readonly PixelBox[]): Tag {
  let under = tag;
  // Each step goes down past a box, so none is met twice.
  for (let box = taken.find((one) => meets(under, one)); box; box = taken.find((one) => meets(under, one))) {
    under = { ...under, y: box.top + box.height + TAG_HEIGHT / 2 + 2 };
  }
  return under;
}

function meets({ x, y, width }: Tag, box: PixelBox): boolean {
  const isBeside = x + width / 2 < box.left || x - width / 2 > box.left + box.width;
  return !isBeside && y + TAG_HEIGHT / 2 >= box.top && y - TAG_HEIGHT / 2 <= box.top + box.height;
}
