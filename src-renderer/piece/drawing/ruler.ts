/**
 * The needle ruler under the piece: a tick a needle, and a mark at every needle
 * that must be found: both of each pattern block, both of what is seen of it,
 * and the edge needles of the row that its groups stand on.
 */
import { label, type Run, type Slot } from '@shared/bed/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import { numberStep, textWidth, type Viewport } from '../../canvas/index.ts';
import { fittingLabels, type Label, type SetLabel } from './labels.ts';
import type { Look } from './look.ts';

/** Height of the ruler with its labels. */
export const RULER_HEIGHT = 44;
/** From the cast-on edge to the ruler's line. */
export const RULER_GAP = 8;

/** Ticks closer than this many pixels run together. */
const LEAST_TICK = 3;
const LABEL_ROOM = 44;

export interface Tick {
  readonly slot: number;
  readonly height: 4 | 7 | 11;
}

/** Ticks of the needles `first` … `last`: every one where there is room, else every fifth or tenth. */
export function ticksOf(first: number, last: number, stitchWidth: number): Tick[] {
  const ticks: Tick[] = [];
  for (let slot = first; slot <= last; slot++) {
    // Needles are numbered from 1 outwards on both sides.
    const number = slot < 0 ? -slot : slot + 1;
    const height = number % 10 === 0 ? 11 : number % 5 === 0 ? 7 : 4;
    const spacing = stitchWidth * (height === 11 ? 10 : height === 7 ? 5 : 1);
    if (spacing >= LEAST_TICK) ticks.push({ slot, height });
  }
  return ticks;
}

/** A needle that is marked. The block's say where to set up, the figure's what is seen, the edge's where margins begin. */
export interface RulerMark {
  readonly slot: number;
  readonly kind: 'first' | 'last' | 'edge' | 'figure';
}

/** Each needle once, by what comes first of: first of a block, last of one, edge, first or last that is seen. */
export function rulerMarks(
  groups: readonly Pick<PlacedGroup, 'block' | 'figure'>[],
  edges: readonly Run[],
): RulerMark[] {
  const marks = [
    ...groups.map(({ block }): RulerMark => ({ slot: block.first, kind: 'first' })),
    ...groups.map(({ block }): RulerMark => ({ slot: block.last, kind: 'last' })),
    ...edges.flatMap(({ first, last }) => [first, last].map((slot): RulerMark => ({ slot, kind: 'edge' }))),
    ...groups.flatMap(({ figure }) => [figure.first, figure.last].map((slot): RulerMark => ({ slot, kind: 'figure' }))),
  ];
  const known = new Map<number, RulerMark>();
  for (const mark of marks) if (!known.has(mark.slot)) known.set(mark.slot, mark);
  return [...known.values()];
}

/** The labels that the ruler has room for: those of marks in their order, the edges of the drawing, then round numbers. */
export function rulerLabels(
  marks: readonly RulerMark[],
  first: number,
  last: number,
  view: Viewport,
  widthOf: (text: string, weight: Label['weight']) => number,
): SetLabel[] {
  const at = (slot: number, weight: Label['weight']): Label => {
    const text = label(slot as Slot);
    return { text, x: view.left(slot) + view.cellWidth / 2, width: widthOf(text, weight), weight };
  };
  const wanted = [
    ...marks.map(({ slot, kind }) => at(slot, kind === 'first' ? 'strong' : 'plain')),
    at(first, 'faint'),
    at(last, 'faint'),
  ];
  const step = view.columnWidth >= LABEL_ROOM ? 1 : numberStep(view.columnWidth, LABEL_ROOM);
  for (let number = step; number <= Math.max(-first, last + 1); number += step) {
    if (-number >= first) wanted.push(at(-number, 'faint'));
    if (number - 1 <= last) wanted.push(at(number - 1, 'faint'));
  }
  // What is marked has its label already, perhaps on the lower line.
  const marked = new Set(marks.map(({ slot }) => label(slot as Slot)));
  return fittingLabels(wanted.filter(({ text, weight }) => weight !== 'faint' || !marked.has(text)));
}

export interface RulerScene {
  readonly first: number;
  readonly last: number;
  readonly marks: readonly RulerMark[];
  /** On what row needles stand as on the ruler; empty where they stand so on all. */
  readonly onRow: string;
  /** The needles that there are, where some of those here are not. */
  readonly bed: Run | null;
}

/** From the ruler's line to the baselines of its two lines of labels. */
const BASELINES = [25, 39] as const;
/** How far marks stand out of the ruler's line, and how thick they are at least. */
const MARKS: { readonly [Kind in RulerMark['kind']]: { readonly tall: number; readonly thick: number } } = {
  first: { tall: 12, thick: 2 },
  last: { tall: 8, thick: 2 },
  edge: { tall: 12, thick: 1 },
  figure: { tall: 5, thick: 2 },
};

/** From the ruler to what is said beside it, and from its line to the baseline of that. */
const BESIDE = 8;
const LOW = 11;

const FONTS: { readonly [Weight in Label['weight']]: string } = {
  strong: '600 13px',
  plain: '400 13px',
  faint: '400 12px',
};

/** Draws the ruler with its line at `y`, in a view `width` pixels wide. */
export function drawRuler(
  context: CanvasRenderingContext2D,
  view: Viewport,
  scene: RulerScene,
  look: Look,
  font: string,
  y: number,
  width: number,
): void {
  const { first, last, marks, onRow, bed } = scene;
  context.fillStyle = look.paper;
  context.fillRect(0, y - 2, width, RULER_HEIGHT + 2);
  context.fillStyle = look.control;
  context.fillRect(view.left(first), Math.round(y), (last - first + 1) * view.cellWidth, 1);
  if (bed) drawMissing(context, view, missingNeedles({ first, last }, bed), look, y);
  context.fillStyle = look.control;
  const seen = view.cellsIn(width, 0);
  const from = Math.max(first, seen.column);
  const to = Math.min(last, seen.column + seen.width - 1);
  for (const { slot, height } of ticksOf(from, to, view.columnWidth)) {
    context.fillRect(Math.round(view.left(slot) + view.cellWidth / 2), Math.round(y), 1, height);
  }
  for (const { slot, kind } of marks) {
    const { tall, thick } = MARKS[kind];
    const isOfBlock = kind === 'first' || kind === 'last';
    const wide = isOfBlock ? Math.max(thick, view.columnWidth) : thick;
    context.fillStyle = isOfBlock ? look.accent : look.ink;
    context.fillRect(view.left(slot) + view.cellWidth / 2 - wide / 2, Math.round(y), wide, tall);
  }
  const fonts = {
    strong: `${FONTS.strong} ${font}`,
    plain: `${FONTS.plain} ${font}`,
    faint: `${FONTS.faint} ${font}`,
  };
  const measure = (text: string, weight: Label['weight']): number => textWidth(context, fonts[weight], text);
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  for (const { text, x, weight, line } of rulerLabels(marks, first, last, view, measure)) {
    context.font = fonts[weight];
    context.fillStyle = weight === 'strong' ? look.ink : look.soft;
    context.fillText(text, x, y + (BASELINES[line] ?? 0));
  }
  if (onRow !== '') drawRow(context, view.span(first, last).left, onRow, look, font, y);
}

/** The needles of a run that the bed has not, at each end of it. */
export function missingNeedles(
  { first, last }: { readonly first: number; readonly last: number },
  bed: Run,
): { readonly first: number; readonly last: number }[] {
  return [
    { first, last: Math.min(last, bed.first - 1) },
    { first: Math.max(first, bed.last + 1), last },
  ].filter((run) => run.first <= run.last);
}

/** How thick the mark of needles that are not there is. */
const MISSING = 5;

function drawMissing(
  context: CanvasRenderingContext2D,
  view: Viewport,
  runs: ReturnType<typeof missingNeedles>,
  look: Look,
  y: number,
): void {
  context.fillStyle = look.warn;
  for (const { first, last } of runs) {
    const { left, right } = view.span(first, last);
    context.fillRect(left, Math.round(y) - 2, right - left, MISSING);
  }
}

/** Beside the left end of the ruler, or where that has no room or is out of sight, under the labels. */
function drawRow(
  context: CanvasRenderingContext2D,
  end: number,
  onRow: string,
  look: Look,
  font: string,
  y: number,
): void {
  context.font = `${FONTS.faint} ${font}`;
  const width = context.measureText(onRow).width;
  const isBeside = end - BESIDE - width >= BESIDE;
  const x = isBeside ? end - BESIDE - width : BESIDE;
  const baseline = y + (isBeside ? LOW : BASELINES[1]);
  context.fillStyle = look.paper;
  context.fillRect(x - 2, baseline - LOW, width + 4, LOW + 3);
  context.fillStyle = look.soft;
  context.textAlign = 'left';
  context.fillText(onRow, x, baseline);
}
