/** What would come of a remedy, read from the plans without and with it. */
import { sectionAt } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';
import { isOfManyYarns } from '../colours.ts';
import { countLongStrands } from '../floats.ts';
import type { Found } from '../gather.ts';

/** A count now and with the remedy. */
export interface NowAndThen {
  readonly before: number;
  readonly after: number;
}

export interface Effect {
  /** Floats and carries over the limit in the open, on the whole piece. */
  readonly long: NowAndThen;
  /** Of them those on the rows of the finding, of its yarn if it names one. */
  readonly here: NowAndThen;
  /** Rows of more yarns than one pass feeds. */
  readonly manyYarns: NowAndThen;
  /** Balls of contrast in use. */
  readonly balls: NowAndThen;
  /** Negative for fewer. */
  readonly wrapsAdded: number;
  /** Floats lifted onto a needle, and chains of them latched up. Negative for fewer. */
  readonly liftsAdded: number;
  readonly chainsAdded: number;
  /** Lengths of yarn that are cut and joined again. Negative for fewer. */
  readonly cutsAdded: number;
  /** Yarn of all kinds, mm, without the margin. Negative for less. */
  readonly mmAdded: number;
  /** Stitches that are knitted in another yarn than now; null for a remedy that draws nothing anew. */
  readonly cellsChanged: number | null;
}

/** What is told of one plan. */
export interface Tally {
  readonly long: number;
  readonly manyYarns: number;
  readonly balls: number;
  readonly wraps: number;
  readonly lifts: number;
  readonly chains: number;
  readonly cuts: number;
  readonly mm: number;
}

export function tallyOf(plan: Plan): Tally {
  const { uses } = plan.yarn;
  return {
    long: countLongStrands(plan, false),
    manyYarns: plan.rows.filter(isOfManyYarns).length,
    balls: uses.reduce((count, use) => count + (use.role === 'contrast' ? use.balls.length : 0), 0),
    wraps: plan.rows.reduce((count, { wraps }) => count + wraps.length, 0),
    lifts: plan.rows.reduce((count, { lifts }) => count + lifts.length, 0),
    chains: plan.rows.reduce((count, { chains }) => count + chains.length, 0),
    cuts: plan.rows.reduce((count, { cuts }) => count + cuts.length, 0),
    mm: uses.reduce((sum, { totalMm }) => sum + totalMm, 0),
  };
}

/** How many floats and carries over the limit lie in the open on the rows of a finding, of its yarn if it names one. */
export function longHere({ rows, sections }: Plan, { all }: Found): number {
  const yarn = all.map((finding) => ('yarn' in finding ? finding.yarn : null))[0] ?? null;
  const isMine = (strand: { readonly yarn: number }): boolean => yarn === null || strand.yarn === yarn;
  let count = 0;
  for (const row of rowsOf(all)) {
    const planned = rows[row - 1];
    if (!planned) continue;
    const isRowLined = sectionAt(sections, row).isLined;
    if (planned.isOver && !isRowLined)
      for (const { isOver, strand } of planned.floats) if (isOver && isMine(strand)) count++;
    for (const { isOver, strand, toRow } of planned.carries) {
      if (isOver && isMine(strand) && !(isRowLined && sectionAt(sections, toRow).isLined)) count++;
    }
  }
  return count;
}

/** Each row once on which one of them is. */
function rowsOf(all: Found['all']): Set<number> {
  const rows = new Set<number>();
  for (const {
    rows: [first, last],
  } of all)
    for (let row = first; row <= last; row++) rows.add(row);
  return rows;
}

/** Stitches whose yarn differs. */
export function cellsBetween(before: Plan, after: Plan): number {
  const [one, other] = [before.fabric, after.fabric];
  if (one.cells.length !== other.cells.length) return other.cells.length;
  let count = 0;
  for (let at = 0; at < one.cells.length; at++) if (one.cells[at] !== other.cells[at]) count++;
  return count;
}
