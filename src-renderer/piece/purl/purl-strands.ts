/**
 * The strands of the purl side, each in its yarn with an edge of light or
 * shadow, so that it is seen which one lies over which. They are drawn as they
 * lie: from the lowest row up, and in a row from the fabric outwards.
 */
import type { Side } from '@shared/bed/index.ts';
import { contrastRatio, GRAPHIC_CONTRAST, legibleOn } from '@shared/colour/index.ts';
import type { LyingCarry, LyingRow, LyingWrap, PurlSide, YarnEnd } from '@shared/plan/purl-side/index.ts';
import type { Float } from '@shared/strands/index.ts';
import type { Size, Viewport } from '../../canvas/index.ts';
import { MOST_SAG } from '../../canvas/strands.ts';
import { strandsOf } from '../drawing/floats.ts';
import type { LaidView } from '../drawing/laid-view.ts';

/** On rows thinner than this many pixels a strand is seen by the veil that it lays over the stitches. */
export const LEAST_ROW = 6;
/** The share of a row's height that yarn takes, and the least and most pixels of it. */
const YARN = { share: 0.26, least: 0.9, most: 9 };
/** How far the edge of a strand reaches beside it, as a share of its thickness. */
const EDGE = { plain: 0.28, over: 0.42 };
/** The edge of a long strand is at least so many pixels wide. */
const LEAST_WARNING = 1;
/** How far strands reach into the stitches at their ends, in stitches. */
const INTO = 0.35;
/** Yarn ends hang down so many rows, and so many pixels at most. */
const TAIL = { rows: 2.4, most: 40 };

/** How the yarn at a palette index is drawn. */
interface Pen {
  readonly yarn: string;
  /** Beside the yarn, where it lies on another. */
  readonly edge: string;
  readonly warning: string;
}

export type Pens = readonly Pen[];

export function pensOf(yarns: readonly string[], warn: string): Pens {
  return yarns.map((yarn) => ({
    yarn,
    edge: contrastRatio(yarn, '#000000') < GRAPHIC_CONTRAST ? 'rgb(255 255 255 / 55%)' : 'rgb(0 0 0 / 55%)',
    warning: legibleOn(yarn, warn, GRAPHIC_CONTRAST),
  }));
}

export interface StrandsShown {
  readonly side: PurlSide;
  readonly rows: number;
  /** Palette index of the main yarn, which wraps are made of. */
  readonly main: number;
  readonly pens: Pens;
  readonly showsFloats: boolean;
  readonly showsWraps: boolean;
}

/** Draws what lies in view. */
export function drawLying(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { width, height }: Size,
  { side, rows, main, pens, showsFloats, showsWraps }: StrandsShown,
): void {
  context.save();
  context.lineJoin = 'round';
  for (const { first, last, view } of laid.parts) {
    if (view.cellHeight < LEAST_ROW) continue;
    const seen = view.cellsIn(width, height);
    const from = Math.max(first, seen.row + 1);
    // From above strands hang into view.
    const above = Math.max(side.reach, Math.ceil(MOST_SAG / view.cellHeight), TAIL.rows) + 1;
    const to = Math.min(last, rows, seen.row + seen.height + Math.ceil(above));
    const thick = thicknessAt(view);
    const isNear = (needle: number): boolean => needle >= seen.column - 1 && needle <= seen.column + seen.width;
    const tails: YarnEnd[] = [];
    for (let row = from; row <= to; row++) {
      const lying = side.row(row);
      if (showsFloats) for (const carry of lying.carries) drawCarry(context, laid, carry, pens, thick);
      if (showsWraps) {
        drawWrapsOf(
          context,
          laid,
          row,
          lying.wraps.filter(({ needle }) => isNear(needle)),
          pens[main],
          thick,
        );
      }
      if (showsFloats) drawFloatsOf(context, view, row, lying, pens, thick, seen);
      for (const end of lying.ends) if (isNear(end.needle)) tails.push(end);
    }
    if (showsFloats) for (const end of tails) drawTail(context, view, end, pens, thick);
  }
  context.restore();
}

function thicknessAt(view: Viewport): number {
  return Math.min(YARN.most, Math.max(YARN.least, view.cellHeight * YARN.share));
}

/** Strokes the path at hand: the edge, and in it the yarn. */
function strokeYarn(context: CanvasRenderingContext2D, pen: Pen | undefined, thick: number, isOver: boolean): void {
  if (!pen) return;
  const edge = isOver ? Math.max(LEAST_WARNING, thick * EDGE.over) : thick * EDGE.plain;
  // The edge ends with the strand, which goes on into its stitch.
  context.lineCap = 'butt';
  context.lineWidth = thick + 2 * edge;
  context.strokeStyle = isOver ? pen.warning : pen.edge;
  context.stroke();
  context.lineCap = 'round';
  context.lineWidth = thick;
  context.strokeStyle = pen.yarn;
  context.stroke();
}

/** The floats of a row, those of one strand together: they do not meet. */
function drawFloatsOf(
  context: CanvasRenderingContext2D,
  view: Viewport,
  row: number,
  { floats, isCovered }: LyingRow,
  pens: Pens,
  thick: number,
  seen: { readonly column: number; readonly width: number },
): void {
  for (let at = 0; at < floats.length;) {
    const { strand } = floats[at] as Float;
    let end = at;
    while (floats[end]?.strand === strand) end++;
    for (const isOver of [false, true]) {
      let isAny = false;
      context.beginPath();
      for (let index = at; index < end; index++) {
        const float = floats[index] as Float;
        if ((float.isOver && !isCovered) !== isOver) continue;
        if (float.last < seen.column - 1 || float.first > seen.column + seen.width) continue;
        traceFloat(context, view, row, float);
        isAny = true;
      }
      if (isAny) strokeYarn(context, pens[strand.yarn], thick, isOver);
    }
    at = end;
  }
}

/** From its stitch over each needle that holds it to the next stitch. */
function traceFloat(context: CanvasRenderingContext2D, view: Viewport, row: number, float: Float): void {
  const into = view.columnWidth * INTO;
  for (const { x1, x2, y, y1, y2, sag } of strandsOf(float, row, view)) {
    const [left, right] = [x1 - (y1 === y ? into : 0), x2 + (y2 === y ? into : 0)];
    context.moveTo(left, y1);
    // The curve reaches half as deep as its control point.
    context.quadraticCurveTo((x1 + x2) / 2, y + 2 * sag, right, y2);
  }
}

const OUT: { readonly [At in Side]: 1 | -1 } = { left: -1, right: 1 };

function sideOfStitch(view: Viewport, needle: number, side: Side): number {
  const { left, right } = view.span(needle, needle);
  return side === 'left' ? left + 0.15 * (right - left) : right - 0.15 * (right - left);
}

function drawCarry(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { yarn, from, to, turnsAt, entersAt, isOver }: LyingCarry,
  pens: Pens,
  thick: number,
): void {
  const [below, above] = [laid.at(from.row), laid.at(to.row)];
  const [x1, x2] = [sideOfStitch(below, from.needle, turnsAt), sideOfStitch(above, to.needle, entersAt)];
  const [y1, y2] = [below.top(from.row - 1) + below.cellHeight / 2, above.top(to.row - 1) + above.cellHeight / 2];
  const out = above.columnWidth * 0.55;
  context.beginPath();
  context.moveTo(x1, y1);
  context.bezierCurveTo(x1 + OUT[turnsAt] * out, y1, x2 + OUT[entersAt] * out, y2, x2, y2);
  strokeYarn(context, pens[yarn], thick, isOver);
}

/** A loop that is open towards the figure, and the way of the strand to it. */
function drawWrapsOf(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  row: number,
  wraps: readonly LyingWrap[],
  pen: Pen | undefined,
  thick: number,
): void {
  if (wraps.length === 0) return;
  const view = laid.at(row);
  const radius = Math.min(view.columnWidth * 0.42, view.cellHeight * 0.42);
  const opening = Math.PI / 3.2;
  context.beginPath();
  for (const { needle, edge, from } of wraps) {
    const [x, y] = middleOf(view, { needle, row });
    if (from) {
      const [x0, y0] = middleOf(laid.at(from.row), from);
      const out = OUT[edge] * view.columnWidth * 0.5;
      context.moveTo(x0, y0 - radius);
      context.bezierCurveTo(x0 + out, y0 - radius, x + out, y + radius, x, y + radius);
    }
    const isLeft = edge === 'left';
    const [start, end] = isLeft ? [opening, -opening] : [Math.PI + opening, Math.PI - opening];
    context.moveTo(x + radius * Math.cos(start), y + radius * Math.sin(start));
    context.arc(x, y, radius, start, end);
  }
  strokeYarn(context, pen, thick * 0.7, false);
}

function middleOf(
  view: Viewport,
  { needle, row }: { readonly needle: number; readonly row: number },
): [number, number] {
  const { left, right } = view.span(needle, needle);
  return [(left + right) / 2, view.top(row - 1) + view.cellHeight / 2];
}

/** The tail hangs down from its stitch; it is drawn far shorter than it is. */
function drawTail(
  context: CanvasRenderingContext2D,
  view: Viewport,
  { yarn, needle, row, side }: YarnEnd,
  pens: Pens,
  thick: number,
): void {
  const long = Math.min(TAIL.most, view.cellHeight * TAIL.rows);
  const [x, y] = [sideOfStitch(view, needle, side), view.top(row - 1) + view.cellHeight / 2];
  const out = OUT[side];
  const end = x + out * long * 0.5;
  context.beginPath();
  context.moveTo(x, y);
  context.bezierCurveTo(x + out * long * 0.5, y, end - out * long * 0.15, y + long * 0.5, end, y + long);
  strokeYarn(context, pens[yarn], thick, false);
  // Where it is cut, the yarn frays.
  context.beginPath();
  for (const spread of [-1, 0, 1]) {
    context.moveTo(end, y + long);
    context.lineTo(end + spread * thick * 1.1, y + long + thick * 1.8);
  }
  strokeYarn(context, pens[yarn], Math.max(0.8, thick * 0.35), false);
}
