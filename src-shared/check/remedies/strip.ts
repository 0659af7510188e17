/** A few rows of a piece with what floats there, small enough to be drawn beside a remedy. */
import type { Run, Slot } from '../../bed/index.ts';
import { OUTSIDE } from '../../fabric/index.ts';
import { sectionAt } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Finding } from '../finding.ts';

/** The rows (1-based) and needles that a strip shows. */
export interface StripWindow {
  readonly rows: readonly [first: number, last: number];
  readonly needles: Run;
}

/** Needles of a row in one yarn, or over which one floats. */
export interface StripRun extends Run {
  readonly row: number;
  /** Palette index. */
  readonly yarn: number;
}

export interface StrandStrip extends StripWindow {
  /** Stitches, row by row from the lowest, beside the piece none. */
  readonly stitches: readonly StripRun[];
  /** Only those over the limit, and in the open. */
  readonly floats: readonly StripRun[];
}

const MOST_ROWS = 12;
const MOST_NEEDLES = 160;
/** Needles shown beside a finding, so that it is seen where it ends. */
const AROUND = 6;

/** What to show of a finding: its lowest rows, and its needles with some around. */
export function stripWindow({ fabric }: Plan, finding: Finding): StripWindow {
  const [first, last] = finding.rows;
  const edges = { first: fabric.first, last: fabric.first + fabric.width - 1 };
  const needles = 'needles' in finding ? finding.needles : edges;
  const from = Math.max(edges.first, needles.first - AROUND);
  const to = Math.min(edges.last, needles.last + AROUND, from + MOST_NEEDLES - 1);
  return {
    rows: [first, Math.min(last, first + MOST_ROWS - 1)],
    needles: { first: from as Slot, last: to as Slot },
  };
}

/** What stands there in a plan. */
export function strandStrip(plan: Plan, window: StripWindow): StrandStrip {
  const { rows, needles } = window;
  const [firstRow, lastRow] = rows;
  const { fabric } = plan;
  const stitches: StripRun[] = [];
  const floats: StripRun[] = [];
  for (let row = firstRow; row <= Math.min(lastRow, fabric.rows); row++) {
    const yarnAt = (needle: number): number => {
      const column = needle - fabric.first;
      if (column < 0 || column >= fabric.width) return OUTSIDE;
      return fabric.cells[(row - 1) * fabric.width + column] ?? OUTSIDE;
    };
    let first = needles.first as number;
    for (let needle = first; needle <= needles.last; needle++) {
      const yarn = yarnAt(needle);
      if (needle < needles.last && yarnAt(needle + 1) === yarn) continue;
      if (yarn !== OUTSIDE) stitches.push({ row, yarn, first: first as Slot, last: needle as Slot });
      first = needle + 1;
    }
    if (sectionAt(plan.sections, row).isLined) continue;
    for (const { isOver, strand, first: from, last: to } of plan.rows[row - 1]?.floats ?? []) {
      if (!isOver || to < needles.first || from > needles.last) continue;
      const [start, end] = [Math.max(from, needles.first), Math.min(to, needles.last)];
      floats.push({ row, yarn: strand.yarn, first: start as Slot, last: end as Slot });
    }
  }
  return { ...window, stitches, floats };
}

/** The most yarns that knit in one of the rows. */
export function mostYarnsIn(stitches: StrandStrip['stitches']): number {
  const inRows = new Map<number, Set<number>>();
  for (const { row, yarn } of stitches) inRows.set(row, (inRows.get(row) ?? new Set()).add(yarn));
  return Math.max(0, ...[...inRows.values()].map(({ size }) => size));
}
