/** All that is marked on the chart of what it measures. */
import type { CellBox, Grid } from '@shared/grid/index.ts';
import type { Blank, Block, Measure, Slip } from '@shared/motif/repeat/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import { drawBrackets, drawNearBrackets } from './brackets.ts';
import { blankColumns, drawHatch } from './hatch.ts';
import type { MotifLook } from './look.ts';
import { drawSlips } from './slips.ts';
import { drawCuts, drawStep } from './steps-and-cuts.ts';

/** Hatches the blank columns at both edges in a view of `width` × `height` pixels. */
export function drawBlank(
  context: CanvasRenderingContext2D,
  view: Viewport,
  grid: Pick<Grid, 'width' | 'height'>,
  blank: Blank,
  look: MotifLook,
  width: number,
  height: number,
): void {
  for (const box of blankColumns(grid, blank)) drawHatch(context, view, box, look.hatch, width, height);
}

/** Draws the marks in a view of `width` × `height` pixels; a chart without figure has none. */
export function drawMeasured(
  context: CanvasRenderingContext2D,
  view: Viewport,
  grid: Pick<Grid, 'width' | 'height'>,
  measure: Measure,
  look: MotifLook,
  width: number,
  height: number,
): void {
  if (!measure.blank) return;
  // A drawing that is being measured may have another size than its old measure.
  if (measure.width === grid.width && measure.height === grid.height) {
    drawStep(context, view, measure, look);
    drawCuts(context, view, measure, look);
    if (measure.near) drawNearBrackets(context, view, boxOf(measure.near), look);
    drawSlips(context, view, measure.slips, look, width, height);
  }
  drawBrackets(context, view, boxOf(measure.repeat), look.accent, look.paper);
}

/** True if both measures are marked alike. */
export function hasSameMarks(a: Measure, b: Measure): boolean {
  return (
    a === b ||
    (a.width === b.width &&
      a.height === b.height &&
      isSameSize(a.repeat, b.repeat) &&
      (a.blank === null) === (b.blank === null) &&
      a.blank?.left === b.blank?.left &&
      a.blank?.right === b.blank?.right &&
      a.blank?.top === b.blank?.top &&
      a.blank?.bottom === b.blank?.bottom &&
      isSameBlock(a.blocks[0], b.blocks[0]) &&
      isSameSize(a.near, b.near) &&
      isSameList(a.slips, b.slips, isSamePlace) &&
      isSameList(a.manyYarns, b.manyYarns, (row, other) => row === other))
  );
}

function boxOf({ width, height }: { readonly width: number; readonly height: number }): CellBox {
  return { column: 0, row: 0, width, height };
}

type Size = { readonly width: number; readonly height: number } | null;

function isSameSize(a: Size, b: Size): boolean {
  return a?.width === b?.width && a?.height === b?.height;
}

function isSameBlock(a: Block | undefined, b: Block | undefined): boolean {
  return (
    a?.laid === b?.laid &&
    isSameSize(a ?? null, b ?? null) &&
    a?.step === b?.step &&
    a?.column === b?.column &&
    a?.row === b?.row
  );
}

function isSamePlace(a: Slip, b: Slip): boolean {
  return a.column === b.column && a.row === b.row;
}

function isSameList<T>(a: readonly T[], b: readonly T[], isSame: (a: T, b: T) => boolean): boolean {
  return a.length === b.length && a.every((item, at) => isSame(item, b[at] as T));
}
