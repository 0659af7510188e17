/** The needle ruler under the piece: a tick a needle, first needles strong, last needles lighter. */
import { label, type Slot } from '@shared/bed/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import { numberStep, type Viewport } from '../../canvas/index.ts';
import { fittingLabels, type Label } from './labels.ts';
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

/** The labels that the ruler has room for: first needles, last needles, the edges, then round numbers. */
export function rulerLabels(
  groups: readonly PlacedGroup[],
  first: number,
  last: number,
  view: Viewport,
  widthOf: (text: string, weight: Label['weight']) => number,
): Label[] {
  const at = (slot: number, weight: Label['weight']): Label => {
    const text = label(slot as Slot);
    return { text, x: view.left(slot) + view.cellWidth / 2, width: widthOf(text, weight), weight };
  };
  const wanted = [
    ...groups.map(({ block }) => at(block.first, 'strong')),
    ...groups.map(({ block }) => at(block.last, 'plain')),
    at(first, 'faint'),
    at(last, 'faint'),
  ];
  const step = view.columnWidth >= LABEL_ROOM ? 1 : numberStep(view.columnWidth, LABEL_ROOM);
  for (let number = step; number <= Math.max(-first, last + 1); number += step) {
    if (-number >= first) wanted.push(at(-number, 'faint'));
    if (number - 1 <= last) wanted.push(at(number - 1, 'faint'));
  }
  return fittingLabels(wanted);
}

export interface RulerScene {
  readonly first: number;
  readonly last: number;
  readonly groups: readonly PlacedGroup[];
}

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
  const { first, last, groups } = scene;
  context.fillStyle = look.paper;
  context.fillRect(0, y - 2, width, RULER_HEIGHT + 2);
  context.fillStyle = look.control;
  context.fillRect(view.left(first), Math.round(y), (last - first + 1) * view.cellWidth, 1);
  const seen = view.cellsIn(width, 0);
  const from = Math.max(first, seen.column);
  const to = Math.min(last, seen.column + seen.width - 1);
  for (const { slot, height } of ticksOf(from, to, view.columnWidth)) {
    context.fillRect(Math.round(view.left(slot) + view.cellWidth / 2), Math.round(y), 1, height);
  }
  context.fillStyle = look.accent;
  for (const { block } of groups) {
    for (const slot of [block.first, block.last]) {
      const isFirst = slot === block.first;
      const thick = Math.max(2, view.columnWidth);
      const middle = view.left(slot) + view.cellWidth / 2;
      context.fillRect(middle - thick / 2, Math.round(y), thick, isFirst ? 12 : 6);
    }
  }
  const measure = (text: string, weight: Label['weight']): number => {
    context.font = `${FONTS[weight]} ${font}`;
    return context.measureText(text).width;
  };
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  for (const { text, x, weight } of rulerLabels(groups, first, last, view, measure)) {
    context.font = `${FONTS[weight]} ${font}`;
    context.fillStyle = weight === 'strong' ? look.ink : look.soft;
    context.fillText(text, x, y + 28);
  }
}
