/**
 * Floats as they hang on the purl side: a strand that sags under its gap,
 * heavier the longer, with its stitches on a tag.
 */
import type { PlanRow } from '@shared/plan/index.ts';
import type { Float } from '@shared/strands/index.ts';
import type { PixelBox, Viewport } from '../../canvas/index.ts';
import type { Look } from './look.ts';

/** On rows thinner than this many pixels only long floats are drawn: from afar the others hide the figure. */
const LEAST_ROW = 6;
/** With more floats than this in view only the long ones carry tags. */
const MOST_TAGGED = 24;
const TAG_HEIGHT = 20;
/** Tags of one stack stand at most this far apart. */
const MOST_APART = 80;

/** Rows of one gauge, 1-based. */
export interface RowSpan {
  readonly first: number;
  readonly last: number;
}

/** A strand in pixels: from `x1` to `x2`, hooked at `y`, hanging down to `y + sag`. */
export interface Strand {
  readonly float: Float;
  readonly row: number;
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
  readonly sag: number;
}

/** The strands in a view of `width` × `height` pixels, of the rows `first` … `last`. */
export function strandsIn(
  rows: readonly PlanRow[],
  view: Viewport,
  width: number,
  height: number,
  { first, last }: RowSpan = { first: 1, last: rows.length },
): Strand[] {
  const seen = view.cellsIn(width, height);
  // A strand sags into the rows below it.
  const from = Math.max(first - 1, seen.row - Math.ceil(MOST_SAG / view.cellHeight));
  const to = Math.min(last, seen.row + seen.height + 1);
  const strands: Strand[] = [];
  for (let index = from; index < to; index++) {
    for (const float of (rows[index] as PlanRow).floats) {
      if (float.last < seen.column || float.first > seen.column + seen.width) continue;
      if (!float.isOver && view.cellHeight < LEAST_ROW) continue;
      const { left: x1, right: x2 } = view.span(float.first, float.last);
      strands.push({
        float,
        row: index + 1,
        x1,
        x2,
        y: view.top(index) + view.cellHeight / 2,
        sag: sagOf(x2 - x1, view.cellHeight),
      });
    }
  }
  return view.cellHeight < CROWDED_ROW ? longestInPlace(strands, CROWD, CROWD) : strands;
}

/** Rows thinner than this put several strands on one pixel; one of them is enough. */
const CROWDED_ROW = 2;
/** Pixels that strands stand apart then. */
const CROWD = 3;
const MOST_SAG = 22;

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

export function drawFloats(
  context: CanvasRenderingContext2D,
  strands: readonly Strand[],
  rowHeight: number,
  look: Look,
): void {
  const byPen = new Map<string, { colour: string; thickness: number; strands: Strand[] }>();
  for (const strand of strands) {
    const { strand: id, stitches, isOver } = strand.float;
    const colour = (isOver ? look.warnStrand[id.yarn] : look.strand[id.yarn]) ?? look.onMain;
    const thickness = thicknessOf(stitches, isOver, rowHeight);
    const pen = `${colour} ${thickness}`;
    let drawn = byPen.get(pen);
    if (!drawn) byPen.set(pen, (drawn = { colour, thickness, strands: [] }));
    drawn.strands.push(strand);
  }
  context.lineCap = 'round';
  const pens = [...byPen.values()].sort((one, other) => one.thickness - other.thickness);
  for (const { colour, thickness, strands: alike } of pens) {
    context.strokeStyle = colour;
    context.lineWidth = thickness;
    context.beginPath();
    for (const { x1, x2, y, sag } of alike) {
      context.moveTo(x1, y);
      // The curve reaches half as deep as its control point.
      context.quadraticCurveTo((x1 + x2) / 2, y + sag * 2, x2, y);
    }
    context.stroke();
  }
  context.lineCap = 'butt';
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
): Tag[] {
  const isCrowded = strands.length > MOST_TAGGED;
  const taggable = strands.filter(({ float, x1, x2 }) => (float.isOver || !isCrowded) && x2 - x1 >= 18);
  const wanted = longestInPlace(taggable, TAG_HEIGHT, TAG_HEIGHT / 2);
  const tags: Tag[] = [];
  for (const { float, x1, x2, y, sag } of wanted) {
    const text = String(float.stitches);
    const tag = { text, x: (x1 + x2) / 2, y: y + sag, width: widthOf(text) + 14, isOver: float.isOver };
    // One tag speaks for a stack of strands: the wider they are, the more of them.
    const apart = Math.min(MOST_APART, Math.max(TAG_HEIGHT + 4, (x2 - x1) / 2));
    const isFree = tags.every(
      (other) => Math.abs(other.y - tag.y) >= apart || Math.abs(other.x - tag.x) >= (other.width + tag.width) / 2 + 4,
    );
    if (isFree && !taken.some((box) => meets(tag, box))) tags.push(tag);
  }
  return tags;
}

/** The longest strand of each place of `across` × `up` pixels, longest first: as many as fit, however many there are. */
function longestInPlace(strands: readonly Strand[], across: number, up: number): Strand[] {
  const longest = new Map<string, Strand>();
  for (const strand of strands) {
    const place = `${Math.floor((strand.x1 + strand.x2) / 2 / across)} ${Math.floor(strand.y / up)}`;
    const there = longest.get(place);
    if (!there || strand.float.stitches > there.float.stitches) longest.set(place, strand);
  }
  return [...longest.values()].sort((one, other) => other.float.stitches - one.float.stitches || one.row - other.row);
}

function meets({ x, y, width }: Tag, box: PixelBox): boolean {
  const isBeside = x + width / 2 < box.left || x - width / 2 > box.left + box.width;
  return !isBeside && y + TAG_HEIGHT / 2 >= box.top && y - TAG_HEIGHT / 2 <= box.top + box.height;
}

export function drawTags(
  context: CanvasRenderingContext2D,
  strands: readonly Strand[],
  taken: readonly PixelBox[],
  look: Look,
  font: string,
): void {
  context.font = `600 12px ${font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const tags = tagsOf(strands, (text) => context.measureText(text).width, taken);
  for (const { text, x, y, width, isOver } of tags) {
    context.beginPath();
    context.roundRect(x - width / 2, y - TAG_HEIGHT / 2, width, TAG_HEIGHT, TAG_HEIGHT / 2);
    context.fillStyle = look.raised;
    context.fill();
    context.lineWidth = isOver ? 1.5 : 1;
    context.strokeStyle = isOver ? look.warn : look.control;
    context.stroke();
    context.fillStyle = look.ink;
    context.fillText(text, x, y + 0.5);
  }
}
