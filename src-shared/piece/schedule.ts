/** Shaping as a knitter reads it: how many stitches at which edge, every how many rows, how often. */
import type { Outline } from './shape.ts';

export type ShapedEdge = 'each' | 'left' | 'right';

/** `stitches` more at an edge (negative: fewer), first on `row`, `times` times, each `every` rows after the one before. */
export interface ShapingStep {
  readonly edge: ShapedEdge;
  readonly stitches: number;
  readonly row: number;
  readonly every: number;
  readonly times: number;
}

/**
 * The steps that shape an outline: first those of both edges alike, then those
 * of the left edge alone, then the right; each bottom to top. Where one edge
 * moves further than the other, what they share is a step of each edge.
 */
export function scheduleOf(outline: Outline): ShapingStep[] {
  const runs: { readonly [Edge in ShapedEdge]: Run[] } = { each: [], left: [], right: [] };
  for (let row = 2; row <= outline.rows; row++) {
    const left = (outline.first[row - 2] as number) - (outline.first[row - 1] as number);
    const right = (outline.last[row - 1] as number) - (outline.last[row - 2] as number);
    const shared =
      Math.sign(left) === Math.sign(right) ? Math.sign(left) * Math.min(Math.abs(left), Math.abs(right)) : 0;
    add(runs.each, row, shared);
    add(runs.left, row, left - shared);
    add(runs.right, row, right - shared);
  }
  return (['each', 'left', 'right'] as const).flatMap((edge) => runs[edge].map((run) => ({ edge, ...run })));
}

interface Run {
  readonly stitches: number;
  readonly row: number;
  readonly every: number;
  times: number;
}

function add(runs: Run[], row: number, stitches: number): void {
  if (stitches === 0) return;
  const before = runs.at(-1);
  const every = row - (before ? before.row + before.every * (before.times - 1) : 0);
  if (before?.every === every && before.stitches === stitches) before.times++;
  else runs.push({ stitches, row, every, times: 1 });
}
