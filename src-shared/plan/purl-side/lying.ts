/**
 * What lies on the purl side of the fabric, and what lies over what.
 *
 * A strand lies where it was put, over what was there already: a float hangs
 * over the rows below it, and a carry over the rows between the two that it
 * joins. In one row the yarns that were laid by hand lie next to the fabric in
 * the order of laying. The first feeder's yarn lies over them. The second
 * feeder stands nearer to the knitter, so its yarn lies over that of the first
 * (common practice, no source).
 */
import type { Run, Side, Slot } from '../../bed/index.ts';
import { sectionAt } from '../../piece/index.ts';
import type { Float, StrandId, Wrap } from '../../strands/index.ts';
import { knittedRowsOf, type KnittedRow, type Supply } from '../running-order/knitted-rows.ts';
import type { YarnIndex } from '../running-order/types.ts';
import type { Plan } from '../types.ts';

/** A needle on a row (1-based). */
export interface Place {
  readonly row: number;
  readonly needle: Slot;
}

/** A strand from the row it knitted last to the next that uses it. */
export interface LyingCarry {
  readonly yarn: YarnIndex;
  readonly from: Place;
  readonly to: Place;
  /** The side that it turns at: that of the carriage after the row it leaves. */
  readonly turnsAt: Side;
  /** The side that it comes from: that of the carriage before the row it goes to. */
  readonly entersAt: Side;
  /** Over the limit, and not covered by a hem or a lining. */
  readonly isOver: boolean;
}

/** A loop of wrapping strand, and the way of the strand to it. */
export interface LyingWrap extends Pick<Wrap, 'needle' | 'edge'> {
  /** Where the strand comes from; null where it begins. */
  readonly from: Place | null;
}

/** A yarn that begins or ends: a tail hangs there. */
export interface YarnEnd extends Place {
  readonly yarn: YarnIndex;
  readonly at: 'start' | 'end';
  /** The side of the stitch that it comes out of. */
  readonly side: Side;
}

/** A row of the purl side. What comes later in a list lies over what comes before it. */
export interface LyingRow {
  /** Those that are taken up for this row: over all rows below it. */
  readonly carries: readonly LyingCarry[];
  /** Made before the row. */
  readonly wraps: readonly LyingWrap[];
  readonly floats: readonly Float[];
  /** Over all of it. */
  readonly ends: readonly YarnEnd[];
  /** A hem or a lining covers it. */
  readonly isCovered: boolean;
}

/** The purl side, asked for row by row. */
export interface PurlSide {
  /** `row` is 1-based and on the piece. */
  row(row: number): LyingRow;
  /** Carries come from so many rows below at most. */
  readonly reach: number;
}

const NONE: readonly never[] = [];

const known = new WeakMap<Plan, PurlSide>();

/** What lies on the purl side. `main` is the palette index of the main yarn; the same plan value gives the same purl side. */
export function purlSideOf(plan: Plan, main: YarnIndex): PurlSide {
  let side = known.get(plan);
  if (!side) known.set(plan, (side = lay(plan, main)));
  return side;
}

function lay(plan: Plan, main: YarnIndex): PurlSide {
  const knitted = knittedRowsOf(plan, main);
  const { carries, ends, reach } = waysOf(plan, knitted);
  const wraps = wrapWays(plan);
  return {
    reach,
    row(row) {
      const index = row - 1;
      return {
        carries: carries[index] ?? NONE,
        wraps: wraps[index] ?? NONE,
        floats: floatsInOrder(plan.rows[index]?.floats ?? NONE, knitted[index] as KnittedRow),
        ends: ends[index] ?? NONE,
        isCovered: sectionAt(plan.sections, row).isLined,
      };
    },
  };
}

/** The supplies of a row with the needles between which each lies, from the fabric outwards. */
function usesOf({
  laid,
  first,
  second,
  contrast,
  edges,
}: KnittedRow): { readonly supply: Supply; readonly run: Run }[] {
  return [
    ...(laid ?? NONE).map(({ supply, needles }) => ({ supply, run: around(needles) })),
    ...(first ? [{ supply: first, run: edges }] : NONE),
    ...(second ? [{ supply: second, run: around(contrast) }] : NONE),
  ];
}

function around(runs: readonly Run[]): Run {
  return { first: (runs[0] as Run).first, last: (runs.at(-1) as Run).last };
}

function floatsInOrder(floats: readonly Float[], row: KnittedRow): readonly Float[] {
  if (floats.length < 2) return floats;
  const uses = usesOf(row);
  const height = ({ strand }: Float): number => uses.findIndex(({ supply }) => isOf(supply, strand));
  return uses.length < 2 ? floats : [...floats].sort((one, other) => height(one) - height(other));
}

function isOf({ yarn, group }: Supply, strand: StrandId): boolean {
  return strand.yarn === yarn && strand.group === group;
}

interface Ways {
  /** By the row that they are taken up for, index 0 being row 1. */
  readonly carries: readonly (readonly LyingCarry[] | undefined)[];
  readonly ends: readonly (readonly YarnEnd[] | undefined)[];
  readonly reach: number;
}

function waysOf(plan: Plan, knitted: readonly KnittedRow[]): Ways {
  const carries: LyingCarry[][] = [];
  const ends: YarnEnd[][] = [];
  let reach = 0;
  const end = (supply: Supply, { row, needle }: Place, at: YarnEnd['at'], side: Side): void =>
    void (ends[row - 1] ??= []).push({ yarn: supply.yarn, row, needle, at, side });
  /** Where each yarn stopped last. */
  const stopped = new Map<Supply, Place & { readonly side: Side }>();
  for (const line of knitted) {
    const { row, from } = line;
    const isFromLeft = from === 'left';
    for (const { supply, run } of usesOf(line)) {
      const near: Place = { row, needle: isFromLeft ? run.first : run.last };
      const before = stopped.get(supply);
      if (!before) end(supply, near, 'start', from);
      else {
        const left = plan.rows[before.row - 1];
        const leads = ({ strand, toRow }: { readonly strand: StrandId; readonly toRow: number }): boolean =>
          toRow === row && isOf(supply, strand);
        const carry = left?.carries.find(leads);
        if (carry) {
          const isCovered = sectionAt(plan.sections, before.row).isLined && sectionAt(plan.sections, row).isLined;
          reach = Math.max(reach, row - before.row);
          (carries[row - 1] ??= []).push({
            yarn: supply.yarn,
            from: { row: before.row, needle: before.needle },
            to: near,
            turnsAt: before.side,
            entersAt: from,
            isOver: carry.isOver && !isCovered,
          });
        } else if (left?.cuts.some(leads)) {
          end(supply, before, 'end', before.side);
          end(supply, near, 'start', from);
        }
      }
      stopped.set(supply, { row, needle: isFromLeft ? run.last : run.first, side: isFromLeft ? 'right' : 'left' });
    }
  }
  for (const [supply, place] of stopped) end(supply, place, 'end', place.side);
  return { carries, ends, reach };
}

/** The wraps of each row (index 0 is row 1), each with where its strand was before. */
function wrapWays(plan: Plan): (LyingWrap[] | undefined)[] {
  const strands = new Map(plan.wrapStrands.map(({ strand }) => [strand, [] as (typeof plan.wrapStrands)[number][]]));
  for (const strand of plan.wrapStrands) strands.get(strand.strand)?.push(strand);
  /** Where each wrapping strand made its last wrap on each edge, and its first of all. */
  const last = new Map<unknown, { left?: Place; right?: Place; first?: Place }>();
  return plan.rows.map(({ row, wraps }) => {
    if (wraps.length === 0) return undefined;
    return wraps.map(({ needle, edge, strand }) => {
      const reaching = (strands.get(strand) ?? NONE).filter((one) => one.firstRow <= row && row <= one.lastRow);
      const by = reaching.find((one) => one.edge === edge) ?? reaching.find((one) => one.edge === 'both');
      let made = last.get(by);
      if (!made) last.set(by, (made = {}));
      // One that is folded in two comes from the first wrap of the other edge.
      const from = made[edge] ?? made.first ?? null;
      made[edge] = { row, needle };
      made.first ??= made[edge];
      return { needle, edge, from };
    });
  });
}
