/** Where the bed ends under a piece that it cannot hold: a line at each end, and all that lies beyond hatched. */
import { label } from '@shared/bed/index.ts';
import type { BeyondBed, Outline } from '@shared/piece/index.ts';
import type { PixelBox } from '../../canvas/index.ts';
import { trace } from './group-marks.ts';
import type { LaidView, PartView } from './laid-view.ts';
import type { Look } from './look.ts';
import { stepsOf, type Step } from './outline.ts';

/** From one line of the hatching to the next. */
const HATCH = 7;
/** A label is so tall. */
const LABEL = 16;

/** The parts of the piece, in pixels, that stand on no needle. */
export function beyondBoxes(laid: LaidView, steps: readonly Step[], { bed }: Pick<BeyondBed, 'bed'>): PixelBox[] {
  return steps.flatMap(({ from, to, first, last }) => {
    const view = laid.at(to);
    const [top, foot] = [view.top(to - 1), view.top(from - 1)];
    const runs = [
      [first, Math.min(last, bed.first - 1)],
      [Math.max(first, bed.last + 1), last],
    ] as const;
    return runs.flatMap(([start, end]): PixelBox[] => {
      if (end < start) return [];
      const { left, right } = view.span(start, end);
      return [{ left, top, width: right - left, height: foot - top }];
    });
  });
}

/**
 * Where the ends of the bed are named, in pixels from the top: over the top
 * edge of the piece, but below the `least` pixels that are taken there, under
 * which a piece reaches that is zoomed in or moved.
 */
export function namedAt(topEdge: number, rulerY: number, least: number): number {
  return Math.max(topEdge - 12, Math.min(least + LABEL / 2, rulerY - LABEL));
}

/** Draws them with their labels, no higher than `least` pixels from the top of the view. */
export function drawBedEnds(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  outline: Outline,
  beyond: BeyondBed,
  look: Look,
  font: string,
  rulerY: number,
  least: number,
): void {
  const steps = stepsOf(
    outline,
    laid.parts.map(({ first }) => first),
  );
  hatch(context, beyondBoxes(laid, steps, beyond), look);
  const top = laid.parts.at(-1) as PartView;
  const head = namedAt(top.view.top(top.last - 1), rulerY, least);
  context.font = `600 12px ${font}`;
  context.textBaseline = 'bottom';
  for (const end of ['first', 'last'] as const) {
    const isLow = end === 'first';
    const needle = beyond.bed[end];
    const way = laid.wayDown(
      top.last,
      head,
      rulerY,
      (view) => Math.round(view.left(isLow ? needle : needle + 1)) + 0.5,
    );
    for (const [colour, thickness] of [
      [look.raised, 4],
      [look.warn, 2],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = thickness;
      context.beginPath();
      trace(context, way);
      context.stroke();
    }
    const said = label(needle);
    const isAtLeft = isLow !== laid.whole.isTurned;
    const width = context.measureText(said).width;
    const x = (way[0]?.x ?? 0) + (isAtLeft ? 5 : -5 - width);
    context.fillStyle = look.paper;
    context.fillRect(x - 2, head - LABEL / 2, width + 4, LABEL);
    context.fillStyle = look.warn;
    context.textAlign = 'left';
    context.fillText(said, x, head + 7);
  }
}

function hatch(context: CanvasRenderingContext2D, boxes: readonly PixelBox[], look: Look): void {
  context.save();
  context.beginPath();
  for (const { left, top, width, height } of boxes) context.rect(left, top, width, height);
  context.clip();
  context.beginPath();
  const [least, most] = [
    Math.min(...boxes.map(({ left }) => left)),
    Math.max(...boxes.map((box) => box.left + box.width)),
  ];
  const head = Math.min(...boxes.map(({ top }) => top));
  const foot = Math.max(...boxes.map((box) => box.top + box.height));
  // Each line falls as far to the left as the boxes are tall. Where they are larger than the screen, no line is drawn out of sight.
  const { width, height } = context.canvas;
  const [from, to] = [Math.max(head, 0), Math.min(foot, height)];
  const tall = Math.max(0, to - from);
  for (let x = Math.floor(Math.max(least, 0) / HATCH) * HATCH; x < Math.min(most, width) + tall; x += HATCH) {
    context.moveTo(x, from);
    context.lineTo(x - tall, to);
  }
  context.strokeStyle = look.onMain;
  context.lineWidth = 1;
  context.globalAlpha = 0.75;
  context.stroke();
  context.restore();
}
