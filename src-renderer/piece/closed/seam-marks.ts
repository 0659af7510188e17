/** The seam of the closed piece, and the rows on which a fill does not match across it. */
import type { BrokenRun } from '@shared/fabric/index.ts';
import { ringAt, rowFootMm, rowHeadMm, within180 } from '@shared/piece/index.ts';
import { drawChip, type Round } from './round-marks.ts';

/** A zigzag this far to both sides, and as far from turn to turn, in pixels. */
const ZIGZAG = 4;
/** Runs of rows lower than this have no room for their number. */
const LEAST_TALL = 24;
/** From the seam to the middle of the number. */
const ASIDE = 52;

/** Where the edges meet: a fine line in two tones, so that it is seen on any yarn, with its name below. */
export function drawSeam({ context, tube, view, turn, look, font }: Round, name: string): void {
  const angle = within180(turn);
  if (Math.abs(angle) >= 90) return;
  const sine = Math.sin((angle * Math.PI) / 180);
  for (const [colour, thickness] of [
    [look.raised, 3],
    [look.ink, 1],
  ] as const) {
    context.beginPath();
    tube.rings.forEach(({ radiusMm, footMm, headMm }, index) => {
      const isStep = radiusMm !== tube.rings[index - 1]?.radiusMm || radiusMm !== tube.rings[index + 1]?.radiusMm;
      if (!isStep) return;
      context.lineTo(view.x(sine * radiusMm), view.y(footMm));
      context.lineTo(view.x(sine * radiusMm), view.y(headMm));
    });
    context.lineTo(view.x(sine * (tube.rings.at(-1)?.radiusMm ?? 0)), view.y(tube.tallMm) - 8);
    context.globalAlpha = thickness === 1 ? 1 : 0.75;
    context.lineWidth = thickness;
    context.strokeStyle = colour;
    context.stroke();
  }
  context.globalAlpha = 1;
  context.font = `400 12px ${font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = look.soft;
  context.fillText(name, view.x(sine * (tube.rings[0]?.radiusMm ?? 0)), view.foot + 14);
}

/** A zigzag along the seam where a fill does not go on, and what is wrong there; the same in two tones as the seam. */
export function drawBrokenRows(
  round: Round,
  broken: readonly BrokenRun[],
  labelOf: (by: BrokenRun['by']) => string,
): void {
  const { context, tube, view, turn, look, font } = round;
  const angle = within180(turn);
  const lowest = tube.rings[0]?.row;
  if (Math.abs(angle) >= 90 || lowest === undefined) return;
  const sine = Math.sin((angle * Math.PI) / 180);
  for (const { first, last, by } of broken) {
    const [foot, head] = [view.y(rowFootMm(tube.laid, first)), view.y(rowHeadMm(tube.laid, last))];
    const xAt = (y: number): number => {
      const ring = ringAt(tube, view.mmAt(0, y).y) ?? tube.rings[last - lowest];
      return view.x(sine * (ring?.radiusMm ?? 0));
    };
    const turns = Math.max(2, Math.round((foot - head) / ZIGZAG));
    context.beginPath();
    for (let at = 0; at <= turns; at++) {
      const y = foot + ((head - foot) * at) / turns;
      const aside = at === 0 || at === turns ? 0 : at % 2 === 0 ? -ZIGZAG : ZIGZAG;
      context.lineTo(xAt(Math.max(head + 0.01, y - 0.01)) + aside, y);
    }
    for (const [colour, thickness] of [
      [look.raised, 5],
      [look.warn, 2],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = thickness;
      context.stroke();
    }
    if (foot - head < LEAST_TALL) continue;
    context.font = `600 12px ${font}`;
    const y = (Math.max(head, 0) + Math.min(foot, view.foot)) / 2;
    drawChip(context, xAt(y) + ASIDE, y, labelOf(by), look, look.warn);
  }
}
