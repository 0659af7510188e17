/** The profile of floats as it is drawn: a column for each yarn, its bars against the limit, and the row that is pointed at. */
import { gaugeAt, sectionAt } from '@shared/piece/index.ts';
import type { Plan, PlanRow } from '@shared/plan/index.ts';
import { longestWithin } from '@shared/strands/index.ts';
import { textWidth } from '../../canvas/index.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';
import {
  barsOf,
  COLUMN_HEAD,
  columnRoom,
  columnsByYarn,
  headOfProfile,
  lengthOf,
  longestOf,
  mostOf,
  numberedBars,
  profileColumns,
  profileWidth,
  type ProfileBar,
} from './profile.ts';
import type { PieceScene } from './scene.ts';

/** Room of a number beside its bar, and between the bars and what stands left of them. */
const NUMBER = 24;
const BEFORE = 8;
/** Between two columns. */
const BETWEEN = 10;

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
  // While a group is in the hand its floats are missing, and the columns stay.
  const columns = profileColumns(plan.rows, width).map(({ yarn }) => ({
    yarn,
    longest: yarn === null ? longestOf(rows) : (columnsByYarn(rows).find((own) => own.yarn === yarn)?.longest ?? []),
  }));
  const limits = laid.parts.map(({ first }) => longestWithin(project.piece.floatLimit, gaugeAt(plan.gauges, first)));
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
  const head = laid.parts.at(-1);
  const under = headOfProfile(plan, width);
  const heading = Math.max(profileTop + 12, (head ? head.view.top(head.last - 1) : 0) - under - 2);
  const plain = `400 12px ${font}`;
  context.font = plain;
  context.textBaseline = 'middle';
  context.fillStyle = look.soft;
  context.textAlign = 'right';
  context.fillText(profileTitle, width - 4, heading);

  // The longest of all has room in its column, and so has twice the limit.
  const least = Math.min(2 * Math.max(...limits), 30);
  const most = columns.map(({ longest }) => Math.max(1, least, mostOf(longest)));
  const names = columns.map(({ yarn }) => (yarn === null ? '' : (project.yarns[yarn]?.name ?? '')));
  const heads = names.map((name) => (name === '' ? 0 : SWATCH + 4 + Math.ceil(textWidth(context, plain, name))));
  const { scale, widths } = columnRoom(most, heads, NUMBER, wide - BEFORE - (columns.length - 1) * BETWEEN);
  let x = width - wide + BEFORE;
  columns.forEach(({ yarn, longest }, index) => {
    const across = widths[index] as number;
    if (yarn !== null) {
      const { colour = look.ink } = project.yarns[yarn] ?? {};
      drawColumnHead(context, colour, names[index] as string, x, heading + COLUMN_HEAD, across, look, plain);
    }
    const bars = barsOf(longest, laid, height);
    drawBars(context, bars, plan, x, scale, look);
    drawLimits(context, laid, limits, x, scale, heading + under, height, look);
    drawNumbers(context, bars, x, scale, look, font);
    x += across + BETWEEN;
  });
}

const SWATCH = 10;

function drawColumnHead(
  context: CanvasRenderingContext2D,
  colour: string,
  name: string,
  x: number,
  y: number,
  across: number,
  look: Look,
  font: string,
): void {
  context.fillStyle = colour;
  context.fillRect(x, y - SWATCH / 2, SWATCH, SWATCH);
  context.lineWidth = 1;
  context.strokeStyle = look.control;
  context.strokeRect(x + 0.5, y - SWATCH / 2 + 0.5, SWATCH - 1, SWATCH - 1);
  const room = across - SWATCH - 4;
  let shown = name;
  while (shown.length > 1 && textWidth(context, font, shown) > room) shown = `${shown.slice(0, -2)}…`;
  if (textWidth(context, font, shown) > room) return;
  context.fillStyle = look.soft;
  context.textAlign = 'left';
  context.fillText(shown, x + SWATCH + 4, y);
}

function drawBars(
  context: CanvasRenderingContext2D,
  bars: readonly ProfileBar[],
  { sections }: Plan,
  x: number,
  scale: number,
  look: Look,
): void {
  for (const { row, float, top, height: tall } of bars) {
    // What a hem or a lining covers may be long.
    context.fillStyle = float.isOver && !sectionAt(sections, row).isLined ? look.warn : look.control;
    // A hair of paper between rows where they have room for it.
    context.fillRect(x, top, Math.max(1, lengthOf(float) * scale), tall > 3 ? tall - 1 : tall);
  }
}

/** The limit as a line beside the rows that it is that of. */
function drawLimits(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  limits: readonly number[],
  x: number,
  scale: number,
  least: number,
  height: number,
  look: Look,
): void {
  laid.parts.forEach(({ first, last, view }, index) => {
    const limit = limits[index] as number;
    const at = Math.round(x + limit * scale) + 0.5;
    const [top, foot] = [Math.max(view.top(last - 1), least), Math.min(view.top(first - 2), height)];
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
}

function drawNumbers(
  context: CanvasRenderingContext2D,
  bars: readonly ProfileBar[],
  x: number,
  scale: number,
  look: Look,
  font: string,
): void {
  context.save();
  const strong = `600 12px ${font}`;
  context.font = strong;
  context.textAlign = 'left';
  for (const { float, top, height: tall } of numberedBars(bars)) {
    const said = String(lengthOf(float));
    const [left, middle] = [x + lengthOf(float) * scale + 3, top + tall / 2];
    context.fillStyle = look.paper;
    context.fillRect(left - 1, middle - 7, textWidth(context, strong, said) + 2, 14);
    context.fillStyle = look.ink;
    context.fillText(said, left, middle);
  }
  context.restore();
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
