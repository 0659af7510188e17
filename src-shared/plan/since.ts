/**
 * What a plan is made again from after cells of its motifs were painted: only
 * rows that hold these are worked out anew, and all others stay the values
 * that they were.
 */
import type { Slot } from '../bed/index.ts';
import {
  paintedCopies,
  paintedPiece,
  type EndNeedled,
  type Fabric,
  type PaintedCopies,
  type PaintedPiece,
} from '../fabric/index.ts';
import { paintedRows } from '../grid/index.ts';
import type { KnitPiece } from '../project/index.ts';
import {
  carriesAgain,
  carriesOf,
  wrapsAgain,
  wrapsOf,
  type LaidStrands,
  type Laying,
  type Ways,
  type Wrap,
  type WrapRules,
} from '../strands/index.ts';
import type { Plan } from './types.ts';

/** What a plan was made of. */
export interface Made {
  readonly piece: KnitPiece;
  /** The patterns on the needles, before any anchors. */
  readonly knitted: EndNeedled;
  /** Before any float is mended. */
  readonly laid: LaidStrands;
  /** Null where floats were mended: then they are worked out anew. */
  readonly onward: Onward | null;
}

/** What follows from strands as they lie. */
export interface Onward {
  readonly ways: Ways;
  readonly wraps: readonly (Wrap[] | undefined)[];
}

/** A plan that was made before its piece was painted. */
export interface Since extends Made {
  readonly plan: Plan;
  readonly painted: PaintedPiece;
  /** Of all patterns, in their order. */
  readonly copies: readonly PaintedCopies[];
}

const madeOf = new WeakMap<Plan, Made>();

/** Keeps what a plan was made of, for the next. */
export function keepMade(plan: Plan, made: Made): void {
  madeOf.set(plan, made);
}

/** What was painted since a plan was made; null where more was changed. */
export function sincePlan(piece: KnitPiece, plan: Plan): Since | null {
  const made = madeOf.get(plan);
  if (!made || !isLikeButForCells(piece, made.piece)) return null;
  const painted = paintedPiece(piece, made.piece, plan);
  return { ...made, plan, painted, copies: plan.patterns.flatMap((_, index) => paintedCopies(painted, index)) };
}

/** The rows (1-based, ascending) that are not as in the plan before, the rows of `knitted` being those that were not before anchors. */
export function rowsSince(
  { plan }: Since,
  fabric: Fabric,
  anchors: readonly (readonly Slot[] | undefined)[],
  knitted: readonly number[],
): readonly number[] {
  const isAnchored = anchors.length > 0 || plan.looseFloats.length > 0;
  if (!isAnchored) return knitted;
  const rows = new Set(knitted);
  for (const row of paintedRows(fabric.cells, plan.fabric.cells, fabric.width)) rows.add(row + 1);
  for (const { row, anchors: before } of plan.rows) {
    if (`${anchors[row - 1] ?? []}` !== `${before}`) rows.add(row);
  }
  return [...rows].sort((a, b) => a - b);
}

/** What follows from strands, and the rows (1-based) that it is not as before on: `painted` and some beside them; null: on all rows. */
export function onwardSince(
  since: Since | null,
  fabric: Fabric,
  laid: LaidStrands,
  settings: Pick<Laying, 'gauges' | 'floatLimit'>,
  isCutAside: (from: number, to: number) => boolean,
  rules: WrapRules,
  painted: readonly number[] | null,
): Onward & { readonly changed: readonly number[] | null } {
  if (painted && since?.onward) {
    const { ways: waysBefore, wraps } = since.onward;
    const before = { laid: since.laid, ways: waysBefore, painted };
    const { ways, changed } = carriesAgain(laid, settings, isCutAside, before);
    return { ways, wraps: wrapsAgain(fabric, laid, rules, wraps, painted), changed: [...painted, ...changed] };
  }
  return { ways: carriesOf(laid, settings, isCutAside), wraps: wrapsOf(fabric, laid, rules), changed: null };
}

/** Whether two pieces are the same in all but what the cells of their motifs are. */
export function isLikeButForCells(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (ArrayBuffer.isView(one)) return ArrayBuffer.isView(other) && one.byteLength === other.byteLength;
  const [keys, others] = [Object.keys(one), Object.keys(other)];
  return (
    Array.isArray(one) === Array.isArray(other) &&
    keys.length === others.length &&
    keys.every((key) => Object.hasOwn(other, key) && isLikeButForCells((one as Values)[key], (other as Values)[key]))
  );
}

interface Values {
  readonly [key: string]: unknown;
}
