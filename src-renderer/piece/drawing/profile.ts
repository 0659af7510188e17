/**
 * The longest float of each row as a bar beside the row numbers, against the
 * limit: so it is seen where floats are long, and the motif stays legible.
 */
import { gaugeAt } from '@shared/piece/index.ts';
import type { Plan, PlanRow } from '@shared/plan/index.ts';
import { longestWithin, type Float } from '@shared/strands/index.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';
import type { PieceScene } from './scene.ts';

/** Bars are at least so tall: several rows share one where rows are thinner. */
const LEAST_BAR = 2;
/** From number to number at least. */
const APART = 40;
/** Room of a number beside its bar, and between the bars and what stands left of them. */
const NUMBER = 24;
const BEFORE = 8;

/** How wide the profile is in a view so many pixels wide; 0: it has no room. */
export function profileWidth({ rows }: Pick<Plan, 'rows'>, width: number): number {
  if (longestOf(rows).every((float) => float === null)) return 0;
  return width >= 620 ? 96 : width >= 380 ? 64 : 0;
}

const known = new WeakMap<readonly PlanRow[], readonly (Float | null)[]>();

/** The longest float of each row, index 0 being row 1; null where a row has none. */
export function longestOf(rows: readonly PlanRow[]): readonly (Float | null)[] {
  let longest = known.get(rows);
  if (!longest) known.set(rows, (longest = rows.map(({ floats }) => longestIn(floats))));
  return longest;
}

function longestIn(floats: readonly Float[]): Float | null {
  let longest: Float | null = null;
  for (const float of floats) if (!longest || float.stitches > longest.stitches) longest = float;
  return longest;
}

/** The longest float of the rows that share a bar, and the pixels of these rows. */
export interface ProfileBar {
  /** The row of that float. */
  readonly row: number;
  readonly float: Float;
  readonly top: number;
  readonly height: number;
}

/** The bars in a view `height` pixels high, from the lowest up. */
export function barsOf(longest: readonly (Float | null)[], laid: LaidView, height: number): ProfileBar[] {
  return laid.parts.flatMap(({ first, last, view }) => {
    const step = Math.max(1, Math.ceil(LEAST_BAR / view.cellHeight));
    const lowest = Math.max(first, view.cellAt(0, height).row + 1);
    const highest = Math.min(last, view.cellAt(0, 0).row + 1);
    const bars: ProfileBar[] = [];
    // Bars share the same rows wherever the view is panned to.
    for (let from = lowest - ((lowest - first) % step); from <= highest; from += step) {
      const to = Math.min(from + step - 1, last);
      let row = from;
      for (let at = from + 1; at <= to; at++) if (lengthOf(longest[at - 1]) > lengthOf(longest[row - 1])) row = at;
      const float = longest[row - 1];
      const top = view.top(to - 1);
      if (float) bars.push({ row, float, top, height: view.top(from - 2) - top });
    }
    return bars;
  });
}

function lengthOf(float: Float | null | undefined): number {
  return float?.stitches ?? 0;
}

/** The bars that carry their number: those over the limit, the longest first, as many as keep apart. */
export function numberedBars(bars: readonly ProfileBar[]): ProfileBar[] {
  const numbered: ProfileBar[] = [];
  const over = bars.filter(({ float }) => float.isOver);
  for (const bar of over.toSorted((one, other) => other.float.stitches - one.float.stitches || one.row - other.row)) {
    if (numbered.every(({ top }) => Math.abs(top - bar.top) >= APART)) numbered.push(bar);
  }
  return numbered;
}

/** Pixels a stitch of the bars: the longest of all has room, and so has twice the limit. */
function scaleOf(longest: readonly (Float | null)[], limit: number, width: number): number {
  const most = Math.max(1, Math.min(2 * limit, 30), ...longest.map(lengthOf));
  return (width - NUMBER - BEFORE) / most;
}

export function drawProfile(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { plan, project, look, font, profileTitle, profileTop }: PieceScene,
  rows: readonly PlanRow[],
  width: number,
  height: number,
): void {
  const wide = profileWidth(plan, width);
  if (wide === 0) return;
  const longest = longestOf(rows);
  const limits = laid.parts.map(({ first }) => longestWithin(project.piece.floatLimit, gaugeAt(plan.gauges, first)));
  const scale = scaleOf(longest, Math.max(...limits), wide);
  const x = width - wide + BEFORE;
  if (
    laid.parts.some(
      ({ view }) => view.span(plan.fabric.first, plan.fabric.first + plan.fabric.width - 1).right > width - wide,
    )
  ) {
    // Zoomed in, the piece lies under it.
    context.globalAlpha = 0.92;
    context.fillStyle = look.paper;
    context.fillRect(width - wide, 0, wide, height);
    context.globalAlpha = 1;
  }

  const bars = barsOf(longest, laid, height);
  for (const { float, top, height: tall } of bars) {
    context.fillStyle = float.isOver ? look.warn : look.control;
    // A hair of paper between rows where they have room for it.
    context.fillRect(x, top, Math.max(1, float.stitches * scale), tall > 3 ? tall - 1 : tall);
  }
  context.fillStyle = look.control;
  const head = laid.parts.at(-1);
  const heading = Math.max(profileTop + 12, (head ? head.view.top(head.last - 1) : 0) - 24);
  context.font = `400 12px ${font}`;
  context.textBaseline = 'middle';
  laid.parts.forEach(({ first, last, view }, index) => {
    const limit = limits[index] as number;
    const at = Math.round(x + limit * scale) + 0.5;
    const [top, foot] = [Math.max(view.top(last - 1), heading + 22), Math.min(view.top(first - 2), height)];
    if (foot <= top) return;
    context.strokeStyle = look.ink;
    context.lineWidth = 1;
    context.setLineDash([3, 3]);
    context.beginPath();
    context.moveTo(at, top);
    context.lineTo(at, foot);
    context.stroke();
    context.setLineDash([]);
    // Parts of one limit say it once.
    if (index < limits.length - 1 && limits[index + 1] === limit) return;
    context.fillStyle = look.soft;
    context.textAlign = 'center';
    context.fillText(String(limit), at, top - 8);
  });
  context.fillStyle = look.soft;
  context.textAlign = 'right';
  context.fillText(profileTitle, width - 4, heading);
  context.font = `600 12px ${font}`;
  context.textAlign = 'left';
  for (const { float, top, height: tall } of numberedBars(bars)) {
    const said = String(float.stitches);
    const [left, middle] = [x + float.stitches * scale + 3, top + tall / 2];
    context.fillStyle = look.paper;
    context.fillRect(left - 1, middle - 7, context.measureText(said).width + 2, 14);
    context.fillStyle = look.ink;
    context.fillText(said, left, middle);
  }
}

/** A row that is less tall is marked at its ends alone, so that the numbers on it stay legible. */
const TALL = 20;
/** How far into the piece. */
const AT_ENDS = 8;

/** The row that is pointed at, on the profile and on the piece. */
export function drawRowMark(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  row: number,
  plan: Plan,
  look: Look,
  width: number,
): void {
  const view = laid.at(row);
  const [top, foot] = [Math.round(view.top(row - 1)) - 0.5, Math.round(view.top(row - 2)) + 0.5];
  const { left, right } = view.span(plan.outline.first[row - 1] as number, plan.outline.last[row - 1] as number);
  context.lineWidth = 1;
  context.strokeStyle = look.accentOnMain;
  if (foot - top >= TALL) context.strokeRect(left - 0.5, top, right - left + 1, foot - top);
  else {
    context.beginPath();
    for (const [end, into] of [
      [left - 0.5, AT_ENDS],
      [right + 0.5, -AT_ENDS],
    ] as const) {
      context.moveTo(end + into, top);
      context.lineTo(end, top);
      context.lineTo(end, foot);
      context.lineTo(end + into, foot);
    }
    context.stroke();
  }
  const wide = profileWidth(plan, width);
  if (wide === 0) return;
  context.lineWidth = 2;
  context.strokeStyle = look.accent;
  context.strokeRect(width - wide + BEFORE - 3, top - 1, wide - BEFORE, foot - top + 2);
}
