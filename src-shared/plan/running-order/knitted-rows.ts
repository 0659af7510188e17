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
import { contrastSum } from '../contrast.ts';
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
}

/** All rows of a plan, from the bottom up (index 0 is row 1), the main yarn being `main`. */
export function knittedRowsOf(plan: Plan, main: YarnIndex): KnittedRow[] {
  const balls = plan.ownBalls;
  if (balls.length === 0) return plan.rows.map((row) => knittedAlone(row, main));
  const supplies = new Supplies(main);
  const contrasts = plan.rows.map((row) => contrastOf(row, balls, supplies));
  const laidAlways = new Set<Supply>();
  for (const { parts } of contrasts) {
    for (const { supply } of parts ?? []) if (supply.group !== null) laidAlways.add(supply);
  }
  return plan.rows.map((row, index) => knittedRow(row, contrasts[index] as Contrast, supplies.main, laidAlways));
}

/** Without balls of groups nothing but a row says how it is knitted, and plans share their rows. */
const alone = new WeakMap<PlanRow, { readonly main: YarnIndex; readonly knitted: KnittedRow }>();

/** The supplies without balls of groups, by the main yarn. */
const shared = new Map<YarnIndex, Supplies>();

const NO_BALLS: ReadonlySet<Supply> = new Set();

function knittedAlone(row: PlanRow, main: YarnIndex): KnittedRow {
  const known = alone.get(row);
  if (known?.main === main) return known.knitted;
  const supplies = shared.get(main) ?? new Supplies(main);
  shared.set(main, supplies);
  const knitted = knittedRow(row, contrastOf(row, [], supplies), supplies.main, NO_BALLS);
  alone.set(row, { main, knitted });
  return knitted;
}

/** The yarns of a row, main included. */
export function yarnsOf({ contrast, first, laid }: KnittedRow, main: YarnIndex): number {
  const yarns = new Set(contrast.map(({ yarn }) => yarn));
  if (laid === null || first !== null) yarns.add(first?.yarn ?? main);
  return yarns.size;
}

/** What a row takes its contrast from. */
interface Contrast {
  readonly forward: number;
  /** The one supply of all of it; null where there are several, or no contrast. */
  readonly only: Supply | null;
  /** By supply, in the order of their first needles, where there are several. */
  readonly parts: readonly Laid[] | null;
}

const NO_CONTRAST: Contrast = { forward: 0, only: null, parts: null };

function knittedRow(
  { row, from, edges, contrast, isMainKnitted }: PlanRow,
  { forward, only, parts }: Contrast,
  main: Supply,
  laidAlways: ReadonlySet<Supply>,
): KnittedRow {
  const byHand = parts ?? (only && laidAlways.has(only) ? [{ supply: only, needles: contrast }] : null);
  let [carriage, first, second]: [KnittedRow['carriage'], Supply | null, Supply | null] = ['plain', main, null];
  if (byHand) [carriage, first] = ['pattern', isMainKnitted ? main : null];
  else if (only && isMainKnitted) [carriage, second] = ['pattern', only];
  else if (only) first = only;
  return { row, from, edges, contrast, forward, carriage, first, second, laid: byHand && fromCarriage(byHand, from) };
}

/** From the carriage's edge away. */
function fromCarriage(parts: readonly Laid[], from: Side): Laid[] {
  const near = ({ needles }: Laid): number =>
    from === 'left' ? (needles[0] as Run).first : -(needles.at(-1) as Run).last;
  return [...parts].sort((a, b) => near(a) - near(b));
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

function contrastOf({ row, contrast }: PlanRow, balls: readonly OwnBall[], supplies: Supplies): Contrast {
  const [lowest] = contrast;
  if (!lowest) return NO_CONTRAST;
  const { stitches: forward, yarns } = contrastSum(contrast);
  const inRow = balls.length === 0 ? balls : balls.filter((ball) => ball.firstRow <= row && row <= ball.lastRow);
  if (inRow.length === 0 && yarns.length === 1) return { forward, only: supplies.of(lowest.yarn, null), parts: null };
  const parts = partsOf(contrast, inRow, supplies);
  return parts.length === 1
    ? { forward, only: (parts[0] as Laid).supply, parts: null }
    : { forward, only: null, parts };
}

/** The contrast of a row by what it comes from, in the order of their first needles. */
function partsOf(contrast: readonly ContrastRun[], balls: readonly OwnBall[], supplies: Supplies): Laid[] {
  const inRow = [...balls].sort((a, b) => a.first - b.first);
  const parts = new Map<Supply, Run[]>();
  const add = (supply: Supply, first: number, last: number): void => {
    const run = { first, last } as Run;
    const known = parts.get(supply);
    if (known) known.push(run);
    else parts.set(supply, [run]);
  };
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
