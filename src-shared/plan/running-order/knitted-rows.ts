/**
 * How each row is knitted: with which yarns in the feeders, the carriage set to
 * plain or to pattern, or with balls that are laid by hand.
 *
 * One pass feeds two yarns. A row of one yarn has it in the first feeder; a row
 * of main and one contrast has the contrast in the second; where there is more,
 * every contrast stitch of the row is laid by hand and the second feeder is
 * empty. A group with a ball of its own that shares a row with another contrast
 * is laid on all of its rows: its ball hangs there.
 */
import type { Run, Side } from '../../bed/index.ts';
import type { ContrastRun, OwnBall } from '../../strands/index.ts';
import type { Plan, PlanRow } from '../types.ts';
import type { YarnIndex } from './types.ts';

/** What a row takes yarn from: the cone of a yarn, or the ball of a group (its index among all groups). */
export interface Supply {
  readonly yarn: YarnIndex;
  readonly group: number | null;
}

/** What one supply knits in a row, left to right. */
export interface Laid {
  readonly supply: Supply;
  readonly needles: readonly Run[];
}

export interface KnittedRow {
  readonly row: number;
  /** The carriage's side before the row. */
  readonly from: Side;
  readonly edges: Run;
  /** The needles that knit contrast: in pattern they stand forward. */
  readonly contrast: readonly ContrastRun[];
  /** How many these are. */
  readonly forward: number;
  readonly carriage: 'plain' | 'pattern';
  /** What is in the feeders. */
  readonly first: Supply | null;
  readonly second: Supply | null;
  /** What is laid by hand, from the carriage's side away; null where the feeders do it. */
  readonly laid: readonly Laid[] | null;
  /** The yarns of the row, main included. */
  readonly yarns: number;
}

/** All rows of a plan, from the bottom up (index 0 is row 1), the main yarn being `main`. */
export function knittedRowsOf(plan: Plan, main: YarnIndex): KnittedRow[] {
  const supplies = new Supplies(main);
  const balls = plan.ownBalls;
  const parts = plan.rows.map((row) => partsOf(row, balls, supplies));
  const laidAlways = new Set<Supply>();
  for (const inRow of parts) {
    if (inRow.length > 1) for (const { supply } of inRow) if (supply.group !== null) laidAlways.add(supply);
  }
  return plan.rows.map((row, index) => knittedRow(row, parts[index] as Laid[], supplies.main, laidAlways));
}

function knittedRow(
  { row, from, edges, contrast, isMainKnitted }: PlanRow,
  parts: readonly Laid[],
  main: Supply,
  laidAlways: ReadonlySet<Supply>,
): KnittedRow {
  let forward = 0;
  for (const run of contrast) forward += run.last - run.first + 1;
  const [one] = parts;
  const isLaid = one !== undefined && (parts.length > 1 || laidAlways.has(one.supply));
  const inMain = isMainKnitted ? main : null;
  const yarns = new Set(parts.map(({ supply }) => supply.yarn)).size + Number(isMainKnitted);
  const common = { row, from, edges, contrast, forward, yarns };
  if (!one) return { ...common, carriage: 'plain', first: main, second: null, laid: null };
  if (isLaid) {
    const near = ({ needles }: Laid): number =>
      from === 'left' ? (needles[0] as Run).first : -(needles.at(-1) as Run).last;
    const laid = [...parts].sort((a, b) => near(a) - near(b));
    return { ...common, carriage: 'pattern', first: inMain, second: null, laid };
  }
  if (!isMainKnitted) return { ...common, carriage: 'plain', first: one.supply, second: null, laid: null };
  return { ...common, carriage: 'pattern', first: main, second: one.supply, laid: null };
}

/** One value for each supply, so that they are compared as such. */
class Supplies {
  readonly main: Supply;
  private readonly known = new Map<number, Supply>();

  constructor(main: YarnIndex) {
    this.main = { yarn: main, group: null };
  }

  of(yarn: YarnIndex, group: number | null): Supply {
    // Palette indices are below 256, so yarn and group make one number.
    const key = (group === null ? 0 : group + 1) * 256 + yarn;
    let supply = this.known.get(key);
    if (!supply) this.known.set(key, (supply = { yarn, group }));
    return supply;
  }
}

/** The contrast of a row by what it comes from, in the order of their first needles. */
function partsOf({ row, contrast }: PlanRow, balls: readonly OwnBall[], supplies: Supplies): Laid[] {
  const [first] = contrast;
  if (!first) return [];
  const inRow = balls.filter(({ firstRow, lastRow }) => firstRow <= row && row <= lastRow);
  if (inRow.length === 0 && contrast.every(({ yarn }) => yarn === first.yarn)) {
    return [{ supply: supplies.of(first.yarn, null), needles: contrast }];
  }
  const parts = new Map<Supply, Run[]>();
  const add = (supply: Supply, first: number, last: number): void => {
    const run = { first, last } as Run;
    const known = parts.get(supply);
    if (known) known.push(run);
    else parts.set(supply, [run]);
  };
  inRow.sort((a, b) => a.first - b.first);
  for (const { first, last, yarn } of contrast) {
    let from: number = first;
    for (const ball of inRow) {
      const [start, end] = [Math.max(from, ball.first), Math.min(last, ball.last)];
      if (start > end) continue;
      if (start > from) add(supplies.of(yarn, null), from, start - 1);
      add(supplies.of(yarn, ball.group), start, end);
      from = end + 1;
    }
    if (from <= last) add(supplies.of(yarn, null), from, last);
  }
  return [...parts].map(([supply, needles]) => ({ supply, needles }));
}
