/**
 * Long floats of a piece, gathered stretch by stretch: a stretch is rows each
 * of which has a long float above one of the row below. What is gathered of one
 * is kept by the floats of its rows, so that copies one above the other are
 * gathered once.
 */
import type { PlanRow } from '../plan/index.ts';
import type { Float } from '../strands/index.ts';
import { Stacks, type Stack } from './stack.ts';

/** The stacks of one yarn; rows count from 0, the lowest of the stretch. */
export interface StacksOfYarn {
  readonly yarn: number;
  readonly stacks: readonly Stack[];
}

/** Whether the ends of a float of a row lie in two groups. */
export type BetweenGroups = (float: Float, row: number) => boolean;

/** The long floats of a row that are gathered; the same for the same list of floats. */
export class LongOfRow {
  /** The stretch that begins with it. */
  readonly stretch: Stretch;
  private below: LongOfRow | null = null;
  private isAbove = false;

  constructor(readonly floats: readonly Float[]) {
    this.stretch = new Stretch(this, null);
  }

  /** Whether one of them lies above one of another row, of the same yarn. */
  standsOn(below: LongOfRow): boolean {
    if (this.below !== below) {
      this.below = below;
      this.isAbove = this.floats.some((float) => below.floats.some((other) => touch(float, other)));
    }
    return this.isAbove;
  }
}

function touch(one: Float, other: Float): boolean {
  return one.first <= other.last && other.first <= one.last && one.strand.yarn === other.strand.yarn;
}

/** A stretch of rows, known by its uppermost and what is below that. */
export class Stretch {
  private known: readonly StacksOfYarn[] | null = null;
  /** With one row more; of several the last that was asked for, so that none is kept that lies nowhere. */
  private longer: Stretch | null = null;

  constructor(
    private readonly uppermost: LongOfRow,
    private readonly lower: Stretch | null,
  ) {}

  /** With the next row above it, if that stands on it; else null. */
  with(above: LongOfRow): Stretch | null {
    if (!above.standsOn(this.uppermost)) return null;
    if (this.longer?.uppermost !== above) this.longer = new Stretch(above, this);
    return this.longer;
  }

  /** What is gathered where no float lies between groups. */
  get stacks(): readonly StacksOfYarn[] {
    return (this.known ??= this.gathered(1, NEVER));
  }

  /** By yarn, in the order in which these first come; `first` is its lowest row. */
  gathered(first: number, isBetweenGroups: BetweenGroups): StacksOfYarn[] {
    const rows = [this.uppermost];
    for (let { lower } = this; lower; lower = lower.lower) rows.push(lower.uppermost);
    rows.reverse();
    const byYarn = new Map<number, Stacks>();
    for (const [row, { floats }] of rows.entries()) {
      for (const float of floats) {
        const { yarn } = float.strand;
        let stacks = byYarn.get(yarn);
        if (!stacks) byYarn.set(yarn, (stacks = new Stacks()));
        stacks.add({ row, next: row + 1, lastRow: row }, float, isBetweenGroups(float, first + row));
      }
    }
    return [...byYarn].map(([yarn, stacks]) => ({ yarn, stacks: stacks.gathered() }));
  }
}

const NEVER: BetweenGroups = () => false;

/** Lists of floats are never changed, and rows that are alike have one between them (`layStrands`). */
const known = new WeakMap<readonly Float[], LongOfRow>();

/** The floats of a row that are over the limit, but for those of which `isLeft` says so; null where there are none. */
export function longOfRow({ floats, isOver }: PlanRow, isLeft: ((float: Float) => boolean) | null): LongOfRow | null {
  if (!isOver) return null;
  if (isLeft) {
    const long = floats.filter((float) => float.isOver && !isLeft(float));
    return long.length > 0 ? new LongOfRow(long) : null;
  }
  let long = known.get(floats);
  if (!long) known.set(floats, (long = new LongOfRow(floats.filter((float) => float.isOver))));
  return long;
}
