/** Where a finding is on the drawing, and where a piece that is too wide could be parted. */
import type { FindingPlace } from '@shared/check/index.ts';
import type { Slot } from '@shared/bed/index.ts';
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import type { Point } from '../../canvas/index.ts';
import { trace } from './group-marks.ts';
import type { LaidView, PartView } from './laid-view.ts';
import type { Look } from './look.ts';

/** What a person was led to. */
export interface Shown {
  /** The worst first. */
  readonly places: readonly FindingPlace[];
  /** Those of them where floats were found too long. */
  readonly floats: readonly FindingPlace[];
  /** The last needle left of each join of the parts; none where they are not asked for. */
  readonly joins: readonly Slot[];
}

export const NOTHING_SHOWN: Shown = { places: [], floats: [], joins: [] };

/** From a place to its frame, so that a place of one row is seen as well. */
const AROUND = 3;

/** The frame of a place: from edge to edge of its rows where it has no needles. */
export function cornersOf(laid: LaidView, { rows: [first, last], needles }: FindingPlace, outline: Outline): Point[] {
  let run = needles;
  if (!run) {
    run = edgesAt(outline, first);
    for (let row = first + 1; row <= last; row++) {
      const edges = edgesAt(outline, row);
      run = { first: Math.min(run.first, edges.first) as Slot, last: Math.max(run.last, edges.last) as Slot };
    }
  }
  return laid.corners(run.first, run.last, first, last, AROUND);
}

export function drawFinding(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { places, joins }: Shown,
  outline: Outline,
  look: Look,
  rulerY: number,
): void {
  const [worst, ...others] = places;
  const frames = (shown: readonly FindingPlace[], inner: number): void => {
    context.beginPath();
    for (const place of shown) {
      trace(context, cornersOf(laid, place, outline));
      context.closePath();
    }
    cased(context, look, inner);
  };
  if (others.length > 0) frames(others, 1);
  if (worst) frames([worst], 2.5);
  const top = laid.parts.at(-1) as PartView;
  for (const join of joins) {
    context.beginPath();
    trace(
      context,
      laid.wayDown(top.last, top.view.top(top.last - 1) - 8, rulerY, (view) => Math.round(view.left(join + 1)) + 0.5),
    );
    context.setLineDash([9, 5]);
    cased(context, look, 2.5);
    context.setLineDash([]);
  }
}

function cased(context: CanvasRenderingContext2D, look: Look, inner: number): void {
  for (const [colour, thickness] of [
    [look.raised, inner + 2],
    [look.warn, inner],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = thickness;
    context.stroke();
  }
}
