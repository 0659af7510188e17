/** Row counter readings along the right edge: reading n stands at the top of row n. */
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import { numberStep, type Viewport } from '../../canvas/index.ts';
import type { LaidView, PartView } from './laid-view.ts';
import type { Look } from './look.ts';

/** Room that the numbers take beside the piece. */
export const COUNTER_WIDTH = 44;
const ROOM = 26;
/** From one number to the next at least. */
const APART = 18;
/** Rows this tall each have their number. */
const EVERY_ROW = 40;

/** The readings between two rows of the view that get a number: every one where there is room, else every fifth, tenth or more. */
export function readingsIn(least: number, most: number, rowHeight: number): number[] {
  const step = rowHeight >= EVERY_ROW ? 1 : numberStep(rowHeight, ROOM);
  const readings: number[] = [];
  for (let reading = Math.max(0, Math.ceil(least / step) * step); reading <= most; reading += step) {
    readings.push(reading);
  }
  return readings;
}

interface Reading {
  readonly reading: number;
  readonly view: Viewport;
}

/** The readings of a part in a view `height` pixels high: 0 stands under row 1. */
function readingsOf({ first, last, view }: PartView, height: number): Reading[] {
  const least = Math.max(first === 1 ? 0 : first, view.cellAt(0, height).row);
  const most = Math.min(last, view.cellAt(0, 0).row + 1);
  return readingsIn(least, most, view.cellHeight).map((reading) => ({ reading, view }));
}

/** In a view `height` pixels high; the numbers stay left of `right`. */
export function drawCounter(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  outline: Outline,
  look: Look,
  font: string,
  right: number,
  height: number,
): void {
  context.font = `400 12px ${font}`;
  context.textBaseline = 'middle';
  context.textAlign = 'left';
  let below = Infinity;
  for (const { reading, view } of laid.parts.flatMap((part) => readingsOf(part, height))) {
    const y = view.top(reading - 1);
    // Where parts meet, the upper one's readings keep off the lower one's.
    if (below - y < APART) continue;
    below = y;
    const { first, last } = edgesAt(outline, Math.max(1, reading));
    const edge = view.span(first, last).right;
    // Zoomed in, the edge may be out of sight; the numbers stay.
    const x = Math.min(edge, right - COUNTER_WIDTH);
    if (x < edge) {
      context.fillStyle = look.paper;
      context.globalAlpha = 0.9;
      context.beginPath();
      context.roundRect(x + 2, y - 9, COUNTER_WIDTH - 6, 18, 4);
      context.fill();
      context.globalAlpha = 1;
    }
    context.fillStyle = look.control;
    context.fillRect(x + 3, Math.round(y - 0.5), 5, 1);
    context.fillStyle = look.soft;
    context.fillText(String(reading), x + 13, y);
  }
}
