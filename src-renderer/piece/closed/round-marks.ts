/** What is drawn over the closed piece: its edge, the gaps round it, the group that is moved. */
import { figuresOf, gapsOnRing, ringsOf, stitchesIn, type PlacedGroup, type RoundGap } from '@shared/fabric/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { angleOf, placeRound, seenSpan, type Ring, type Tube } from '@shared/piece/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { strokeFrame } from '../drawing/frame.ts';
import type { Look } from '../drawing/look.ts';
import type { TubeView } from './tube-view.ts';

/** What is drawn on, and what is looked at. */
export interface Round {
  readonly context: CanvasRenderingContext2D;
  readonly tube: Tube;
  readonly view: TubeView;
  readonly turn: number;
  readonly look: Look;
  readonly font: string;
}

/** Numbers nearer to the sides than this, in degrees, would stand on stitches that are hardly seen. */
const MOST_ASIDE = 72;
const CHIP_HEIGHT = 20;
/** A tube of a smaller radius in pixels has no room for numbers. */
const LEAST_RADIUS = 36;
/** From the foot of a band to its dimension line. */
const AWAY = 22;

/** The edge of the tube, a step where rows of unlike width meet. */
export function drawSilhouette({ context, tube, view, look }: Round): void {
  context.beginPath();
  traceSide(context, tube, view, 1, false);
  traceSide(context, tube, view, -1, true);
  context.closePath();
  context.lineWidth = 1;
  context.strokeStyle = look.ink;
  context.stroke();
}

function traceSide(context: CanvasRenderingContext2D, tube: Tube, view: TubeView, side: 1 | -1, isDown: boolean): void {
  const corners = tube.rings.filter(
    ({ radiusMm }, index) =>
      radiusMm !== tube.rings[index - 1]?.radiusMm || radiusMm !== tube.rings[index + 1]?.radiusMm,
  );
  for (const { radiusMm, footMm, headMm } of isDown ? corners.reverse() : corners) {
    const x = view.x(side * radiusMm);
    const [lower, upper] = [view.y(footMm), view.y(headMm)];
    context.lineTo(x, isDown ? upper : lower);
    context.lineTo(x, isDown ? lower : upper);
  }
}

/** The gaps of each band from figure to figure, with their stitches; the one across the seam stands out. From afar bands without room are left out. */
export function drawGapsRound(round: Round, plan: Plan): void {
  const { tube, view } = round;
  let above = Infinity;
  const feet = bandsOf(plan).flatMap((band) =>
    ringsOf(band, tube)
      .slice(0, 1)
      .map((foot) => ({ band, foot })),
  );
  for (const { band, foot } of feet.sort((one, other) => one.foot.row - other.foot.row)) {
    const y = lineUnder(round, foot);
    if (above - y < CHIP_HEIGHT + 4 || foot.radiusMm * view.scale < LEAST_RADIUS) continue;
    above = y;
    for (const gap of gapsOnRing(tube, foot, figuresOf(band))) {
      if (gap.to > gap.from) drawGap(round, foot, y, gap);
    }
  }
}

/** Where the dimension line of a band goes whose lowest ring is `foot`. */
function lineUnder({ view }: Round, foot: Ring): number {
  const y = view.y(foot.footMm);
  // A band at the lower edge has no plain rows below it.
  return Math.round(y + AWAY + CHIP_HEIGHT / 2 <= view.foot ? y + AWAY : y - CHIP_HEIGHT / 2 - 4) + 0.5;
}

function drawGap({ context, view, turn, look, font }: Round, ring: Ring, y: number, gap: RoundGap): void {
  const { from, to, isAcrossSeam } = gap;
  const span = seenSpan(ring, from, to, turn);
  if (!span) return;
  const [left, right] = [view.x(span.left), view.x(span.right)];
  context.lineWidth = isAcrossSeam ? 2 : 1;
  context.strokeStyle = look.onMain;
  context.globalAlpha = isAcrossSeam ? 1 : 0.75;
  context.beginPath();
  context.moveTo(left, y);
  context.lineTo(right, y);
  // A stop only where the gap ends, not where it goes out of sight.
  for (const [place, x] of [
    [from, left],
    [to, right],
  ] as const) {
    if (Math.abs(angleOf(ring, place, turn)) > 90) continue;
    context.moveTo(x, y - 5);
    context.lineTo(x, y + 5);
  }
  context.stroke();
  context.globalAlpha = 1;

  const middle = angleOf(ring, (from + to) / 2, turn);
  if (Math.abs(middle) > MOST_ASIDE) return;
  const x = view.x(Math.sin((middle * Math.PI) / 180) * ring.radiusMm);
  context.font = `600 13px ${font}`;
  drawChip(context, x, y, String(stitchesIn(gap)), look, isAcrossSeam ? look.accent : null);
}

/** A number that is legible on any yarn, in the font that is set; framed in a colour where it stands out. */
export function drawChip(
  context: CanvasRenderingContext2D,
  x: number,
  y: number,
  text: string,
  look: Look,
  frame: string | null,
): void {
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const width = context.measureText(text).width + 14;
  context.beginPath();
  context.roundRect(x - width / 2, y - CHIP_HEIGHT / 2, width, CHIP_HEIGHT, CHIP_HEIGHT / 2);
  context.fillStyle = look.raised;
  context.fill();
  context.lineWidth = frame ? 2 : 1;
  context.strokeStyle = frame ?? look.control;
  context.stroke();
  context.fillStyle = look.ink;
  context.fillText(text, x, y + 0.5);
}

/** A frame round the group that the commands move, as far as it is seen. */
export function drawChosenRound({ context, tube, view, turn, look }: Round, group: PlacedGroup): void {
  const rings = tube.rings.filter(({ row }) => row >= group.firstRow && row <= group.lastRow);
  const sides = rings.map((ring) => {
    const places = [placeRound(tube, ring, group.block.first), placeRound(tube, ring, group.block.last)];
    return { ring, from: Math.min(...places), to: Math.max(...places) + 1 };
  });
  strokeFrame(context, look, () => {
    for (const side of ['from', 'to'] as const) {
      let isSeen = false;
      for (const each of sides) {
        const angle = angleOf(each.ring, each[side], turn);
        const isNowSeen = Math.abs(angle) <= 90;
        const x = view.x(Math.sin((angle * Math.PI) / 180) * each.ring.radiusMm);
        if (isNowSeen && !isSeen) context.moveTo(x, view.y(each.ring.footMm));
        if (isNowSeen) context.lineTo(x, view.y(each.ring.headMm));
        isSeen = isNowSeen;
      }
    }
    for (const [each, edge] of [
      [sides[0], 'footMm'],
      [sides.at(-1), 'headMm'],
    ] as const) {
      const span = each && seenSpan(each.ring, each.from, each.to, turn);
      if (!span) continue;
      const y = view.y(each.ring[edge]);
      context.moveTo(view.x(span.left), y);
      context.lineTo(view.x(span.right), y);
    }
  });
}
