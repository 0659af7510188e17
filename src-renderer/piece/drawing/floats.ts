/**
 * Floats as they hang on the purl side: a strand that sags under its gap,
 * heavier the longer, with its stitches on a tag. Where it is hooked or latched
 * up it hangs in parts, from one needle that holds it to the next.
 */
import { sectionAt, type SectionSpan } from '@shared/piece/index.ts';
import type { PlanRow } from '@shared/plan/index.ts';
import { looseParts, looseStitches, type Float } from '@shared/strands/index.ts';
import { textWidth, type PixelBox, type Viewport } from '../../canvas/index.ts';
import { longestInPlace, MOST_SAG, sagOf, tagsOf, TAG_HEIGHT, thicknessOf, type Strand } from '../../canvas/strands.ts';
import type { Look } from './look.ts';

/** On rows thinner than this many pixels only long floats are drawn: from afar the others hide the figure. */
const LEAST_ROW = 6;

/** Rows of one gauge, 1-based. */
export interface RowSpan {
  readonly first: number;
  readonly last: number;
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
      strands.push(...strandsOf(float, index + 1, view));
    }
  }
  return view.cellHeight < CROWDED_ROW ? longestInPlace(strands, CROWD, CROWD) : strands;
}

/** The same strands, of which none warns that a folded hem or a lining covers. */
export function warnedInOpen(strands: readonly Strand[], sections: readonly SectionSpan[]): readonly Strand[] {
  if (!sections.some(({ isLined }) => isLined)) return strands;
  return strands.map((strand) =>
    strand.isOver && sectionAt(sections, strand.row).isLined ? { ...strand, isOver: false } : strand,
  );
}

/** How far above the middle of its row a float is held, in rows: it hangs on the needle that knits the next one. */
export const HELD_UP = 0.75;

/** A float of a row as it hangs: its loose parts from left to right. */
export function strandsOf(float: Float, row: number, view: Viewport): Strand[] {
  const y = view.top(row - 1) + view.cellHeight / 2;
  const up = y - HELD_UP * view.cellHeight;
  const longest = looseStitches(float);
  return looseParts(float).map(({ first, last, stitches, isHeldAt }) => {
    const span = view.span(first, last);
    // A needle that holds it does so in its middle.
    const half = view.columnWidth / 2;
    const [heldLeft, heldRight] = view.isTurned ? [isHeldAt.right, isHeldAt.left] : [isHeldAt.left, isHeldAt.right];
    const x1 = span.left - (heldLeft ? half : 0);
    const x2 = span.right + (heldRight ? half : 0);
    return {
      ...{ float, row, stitches, x1, x2, y },
      isOver: float.isOver && stitches === longest,
      y1: heldLeft ? up : y,
      y2: heldRight ? up : y,
      sag: sagOf(x2 - x1, view.cellHeight),
    };
  });
}

/** Rows of so many pixels have room for all strands, and for the numbers on them. */
export const ROOMY_ROW = 18;

/** Rows thinner than this put several strands on one pixel; one of them is enough. */
const CROWDED_ROW = 2;
/** Pixels that strands stand apart then. */
const CROWD = 3;

export function drawFloats(
  context: CanvasRenderingContext2D,
  strands: readonly Strand[],
  rowHeight: number,
  look: Look,
): void {
  const pens: { colour: string; thickness: number; strands: Strand[] }[] = [];
  const byPen = new Map<string, Map<number, Strand[]>>();
  for (const strand of strands) {
    const { stitches, isOver } = strand;
    const id = strand.float.strand;
    const colour = (isOver ? look.warnStrand[id.yarn] : look.strand[id.yarn]) ?? look.onMain;
    const thickness = thicknessOf(stitches, isOver, rowHeight);
    let ofColour = byPen.get(colour);
    if (!ofColour) byPen.set(colour, (ofColour = new Map<number, Strand[]>()));
    const drawn = ofColour.get(thickness);
    if (drawn) drawn.push(strand);
    else {
      const alike = [strand];
      ofColour.set(thickness, alike);
      pens.push({ colour, thickness, strands: alike });
    }
  }
  context.lineCap = 'round';
  pens.sort((one, other) => one.thickness - other.thickness);
  for (const { colour, thickness, strands: alike } of pens) {
    context.strokeStyle = colour;
    context.lineWidth = thickness;
    context.beginPath();
    for (const { x1, x2, y, y1, y2, sag } of alike) {
      context.moveTo(x1, y1);
      // The curve reaches half as deep as its control point.
      context.quadraticCurveTo((x1 + x2) / 2, y + sag * 2, x2, y2);
    }
    context.stroke();
  }
  context.lineCap = 'butt';
}

export function drawTags(
  context: CanvasRenderingContext2D,
  strands: readonly Strand[],
  taken: readonly PixelBox[],
  look: Look,
  font: string,
  onTaken: 'left-out' | 'below' = 'left-out',
): void {
  const numbers = `600 12px ${font}`;
  const tags = tagsOf(strands, (text) => textWidth(context, numbers, text), taken, onTaken);
  context.font = numbers;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
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
