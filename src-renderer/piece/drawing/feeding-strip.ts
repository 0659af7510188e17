/**
 * Along the rows, which yarn is in which feeder: a column for each feeder, in
 * the colours of the yarns and with their names where there is room. Yarns that
 * are laid by hand stand side by side in the second column, with a broken edge.
 */
import { contrastRatio, legibleOn } from '@shared/colour/index.ts';
import type { FeedingRun } from '@shared/plan/feeding.ts';
import { textWidth } from '../../canvas/index.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';

/** From the left edge of the view to the columns, and how wide one is. */
const LEFT = 8;
const WIDTH = 16;
const BETWEEN = 3;
/** Above the uppermost row. */
const HEAD = 18;
/** Blocks less tall than this name no yarn. */
const LEAST_NAMED = 24;
/** Contrast of text (WCAG 2.2, 1.4.3). */
const TEXT = 4.5;

export interface FeedingScene {
  readonly runs: readonly FeedingRun[];
  /** By palette index. */
  readonly names: readonly string[];
}

/** In a view `height` pixels high, between `top` and `foot`. */
export function drawFeeding(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { runs, names }: FeedingScene,
  look: Look,
  font: string,
  top: number,
  foot: number,
): void {
  const head = laid.parts.at(-1);
  const [lowest] = laid.parts;
  if (!head || !lowest || runs.length === 0) return;
  const upper = Math.max(head.view.top(head.last - 1), top + HEAD);
  const lower = Math.min(lowest.view.top(lowest.first - 2), foot);
  if (lower <= upper) return;
  context.save();
  context.fillStyle = look.paper;
  context.globalAlpha = 0.92;
  context.fillRect(LEFT - 3, upper - HEAD, 2 * WIDTH + BETWEEN + 6, lower - upper + HEAD + 2);
  context.globalAlpha = 1;
  context.font = `600 12px ${font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = look.soft;
  for (const feeder of [1, 2] as const) context.fillText(String(feeder), middleOf(feeder), upper - HEAD / 2);
  context.beginPath();
  context.rect(LEFT - 1, upper, 2 * WIDTH + BETWEEN + 2, lower - upper);
  context.clip();
  const plain = `400 12px ${font}`;
  context.font = plain;
  const strip = { look, names, upper, lower, font: plain };
  for (const { first, last, feeders, byHand } of runs) {
    const [y, end] = [laid.at(last).top(last - 1), laid.at(first).top(first - 2)];
    if (end < upper || y > lower) continue;
    for (const feeder of [1, 2] as const) {
      const yarn = feeders[feeder];
      if (yarn !== null) drawYarns(context, [yarn], feeder, y, end, false, strip);
    }
    if (byHand.length > 0) drawYarns(context, byHand, 2, y, end, true, strip);
  }
  context.restore();
}

function leftOf(feeder: 1 | 2): number {
  return LEFT + (feeder - 1) * (WIDTH + BETWEEN);
}

function middleOf(feeder: 1 | 2): number {
  return leftOf(feeder) + WIDTH / 2;
}

interface Strip {
  readonly look: Look;
  readonly names: readonly string[];
  readonly upper: number;
  readonly lower: number;
  /** That the context is in. */
  readonly font: string;
}

function drawYarns(
  context: CanvasRenderingContext2D,
  yarns: readonly number[],
  feeder: 1 | 2,
  top: number,
  foot: number,
  isByHand: boolean,
  { look, names, upper, lower, font }: Strip,
): void {
  const x = leftOf(feeder);
  const wide = WIDTH / yarns.length;
  const tall = Math.max(1, foot - top);
  yarns.forEach((yarn, index) => {
    context.fillStyle = look.yarns[yarn] ?? look.control;
    context.fillRect(x + index * wide, top, wide, tall);
  });
  if (tall >= 3) {
    context.strokeStyle = look.ink;
    context.lineWidth = 1;
    context.setLineDash(isByHand ? [2, 2] : []);
    context.strokeRect(x + 0.5, Math.round(top) + 0.5, WIDTH - 1, Math.round(tall) - 1);
    context.setLineDash([]);
  }
  const [yarn] = yarns;
  if (yarns.length !== 1 || yarn === undefined) return;
  const [from, to] = [Math.max(top, upper), Math.min(foot, lower)];
  if (to - from < LEAST_NAMED) return;
  const name = names[yarn] ?? '';
  if (textWidth(context, font, name) + 8 > to - from) return;
  const colour = look.yarns[yarn] ?? '#000000';
  context.save();
  context.translate(x + WIDTH / 2 + 0.5, (from + to) / 2);
  context.rotate(-Math.PI / 2);
  context.fillStyle = legibleOn(colour, contrastRatio(colour, '#ffffff') >= TEXT ? '#ffffff' : '#1d2330', TEXT);
  context.fillText(name, 0, 0);
  context.restore();
}
