/**
 * `long-floats`, and `lined-floats` where a lining covers them, told stretch by
 * stretch. After cells were painted only the stretches that hold painted rows,
 * or lie next to one, are told anew; all others stay the findings that they were.
 */
import type { Slot } from '../bed/index.ts';
import type { PlacedGroup } from '../fabric/index.ts';
import { sectionAt } from '../piece/index.ts';
import type { PlanRow } from '../plan/index.ts';
import type { Float } from '../strands/index.ts';
import { isFromEdgeToEdge } from './end-needles.ts';
import type { Finding } from './finding.ts';
import { longOfRow, type BetweenGroups, type StacksOfYarn, type Stretch } from './float-stacks.ts';
import type { Inspected } from './inspected.ts';
import type { Stack } from './stack.ts';

/** What is told of the long floats of a piece. */
export interface ToldFloats {
  readonly of: Inspected;
  /** From the bottom up. */
  readonly stretches: readonly ToldStretch[];
  /** The yarns that float too long, in the order in which they first come. */
  readonly yarns: Yarns;
}

interface Yarns {
  readonly inOpen: readonly number[];
  readonly lined: readonly number[];
}

/** Neighbouring rows (1-based). */
interface FoundStretch {
  readonly first: number;
  readonly last: number;
  readonly isLined: boolean;
  readonly stacks: readonly StacksOfYarn[];
}

export interface ToldStretch extends FoundStretch {
  /** By their first rows; on one row in the order of the yarns. */
  readonly findings: readonly Finding[];
  /** What each of them is told of. */
  readonly inOrder: readonly StackOfYarn[];
}

/** `before`: what was told before cells were painted, or of any other plan. Floats across blank rows in the open are told as `contrast-loose-across`. */
export function toldFloats(all: Inspected, before: ToldFloats | null): ToldFloats {
  const last = before && all.changed && isToldAlike(all, before.of) ? before.stretches : [];
  const stretches = stretchesOf(
    all,
    last.length > 0 ? keptOf(all.changed as readonly number[], last, all.rows.length) : null,
  );
  const yarns = { inOpen: yarnsOf(stretches, false), lined: yarnsOf(stretches, true) };
  const isInOrder = `${yarns.inOpen}/${yarns.lined}` === `${before?.yarns.inOpen}/${before?.yarns.lined}`;
  const sameIn = comparedOnce();
  let at = 0;
  const told = stretches.map((stretch) => {
    if (isInOrder && isTold(stretch)) return stretch;
    while ((last[at]?.first ?? Infinity) < stretch.first) at++;
    return tell(stretch, yarns, all.piece.mainYarn, last[at] ?? null, sameIn);
  });
  return { of: all, stretches: told, yarns };
}

function isTold(stretch: FoundStretch | ToldStretch): stretch is ToldStretch {
  return 'findings' in stretch;
}

/** Whether the same floats on the same rows would be told in the same words. */
function isToldAlike(now: Inspected, before: Inspected): boolean {
  const placeOf = ({ block, firstRow, lastRow }: PlacedGroup): string =>
    [block.first, block.last, firstRow, lastRow].join(' ');
  return (
    now.sections === before.sections &&
    now.rows.length === before.rows.length &&
    now.piece.mainYarn === before.piece.mainYarn &&
    now.groups.map(placeOf).join() === before.groups.map(placeOf).join()
  );
}

/** What stays of stretches after rows were changed. */
interface Kept {
  /** The stretches that no changed row lies in or next to. */
  readonly stretches: readonly ToldStretch[];
  /** By the number of a row: 1 where it is looked at anew. */
  readonly anew: Uint8Array;
}

function keptOf(changed: readonly number[], before: readonly ToldStretch[], rows: number): Kept {
  const anew = new Uint8Array(rows + 1);
  for (const row of changed) anew[row] = 1;
  let next = 0;
  const stretches = before.filter(({ first, last }) => {
    while ((changed[next] ?? Infinity) < first - 1) next++;
    const stays = (changed[next] ?? Infinity) > last + 1;
    if (!stays) anew.fill(1, first, last + 1);
    return stays;
  });
  return { stretches, anew };
}

/** From the bottom up, with those that are kept as they are. */
function stretchesOf({ sections, rows, groups }: Inspected, kept: Kept | null): (FoundStretch | ToldStretch)[] {
  const isBetweenGroups: BetweenGroups = ({ strand, first, last }, row) =>
    strand.role === 'contrast' && strand.group === null && joinsGroups(groups, row, first, last);
  const found: (FoundStretch | ToldStretch)[] = [];
  let next = 0;
  let [stretch, first, isLined]: [Stretch | null, number, boolean] = [null, 0, false];
  const endBefore = (row: number): void => {
    if (!stretch) return;
    const stacks = groups.length > 1 ? stretch.gathered(first, isBetweenGroups) : stretch.stacks;
    found.push({ first, last: row - 1, isLined, stacks });
    stretch = null;
  };
  for (let row = 1; row <= rows.length; row++) {
    if (kept?.anew[row] === 0) {
      endBefore(row);
      const stays = kept.stretches[next];
      if (stays?.first !== row) continue;
      found.push(stays);
      row = stays.last;
      next++;
      continue;
    }
    const planned = rows[row - 1] as PlanRow;
    const { endNeedles } = planned;
    const isCovered = planned.isOver && sectionAt(sections, row).isLined;
    const isLeft = endNeedles?.isBlank && !isCovered ? (float: Float) => isFromEdgeToEdge(float, endNeedles) : null;
    const long = longOfRow(planned, isLeft);
    const longer: Stretch | null = long && stretch && isCovered === isLined ? (stretch as Stretch).with(long) : null;
    if (longer) {
      stretch = longer;
      continue;
    }
    endBefore(row);
    if (long) [stretch, first, isLined] = [long.stretch, row, isCovered];
  }
  endBefore(rows.length + 1);
  return found;
}

/** The yarns of stretches, each once, in the order in which they first come. */
function yarnsOf(stretches: readonly FoundStretch[], lined: boolean): number[] {
  const yarns: number[] = [];
  for (const { isLined, stacks } of stretches) {
    if (isLined === lined) for (const { yarn } of stacks) if (!yarns.includes(yarn)) yarns.push(yarn);
  }
  return yarns;
}

/** `before`: what was told of a stretch there; what is as it was stays the finding that it was. */
function tell(
  { first, last, isLined, stacks }: FoundStretch,
  yarns: Yarns,
  main: number,
  before: ToldStretch | null,
  sameIn: SameStacks,
): ToldStretch {
  const inOrder = stacksInOrder(stacks, isLined ? yarns.lined : yarns.inOpen);
  const isBeside = before?.first === first && before.isLined === isLined;
  const known = isBeside ? sameIn(inOrder, before.inOrder) : null;
  const findings = new Array<Finding>(inOrder.length);
  for (let at = 0; at < findings.length; at++) {
    const same = known?.[at] ?? -1;
    findings[at] =
      same >= 0 ? (before?.findings[same] as Finding) : findingOf(inOrder[at] as StackOfYarn, first, isLined, main);
  }
  return { first, last, isLined, stacks, inOrder, findings };
}

/** `first`: the lowest row of its stretch. */
function findingOf({ yarn, stack }: StackOfYarn, first: number, isLined: boolean, main: number): Finding {
  const { needles, longest, longestMm, count, isBetweenGroups } = stack;
  const rows = [stack.rows[0] + first, stack.rows[1] + first] as const;
  const role = yarn === main ? 'main' : 'contrast';
  return isLined
    ? { code: 'lined-floats', role, yarn, rows, needles, longest, longestMm, count }
    : { code: 'long-floats', role, yarn, rows, needles, longest, longestMm, count, isBetweenGroups };
}

/** Stretches that are alike have their stacks between them: these are put in order once for all. */
const inOrderOf = new WeakMap<readonly StacksOfYarn[], { readonly order: string; readonly inOrder: StackOfYarn[] }>();

interface StackOfYarn {
  readonly yarn: number;
  readonly stack: Stack;
}

/** By their first rows; on one row in the order of yarns, and then in which they were gathered. */
function stacksInOrder(stacks: readonly StacksOfYarn[], yarns: readonly number[]): readonly StackOfYarn[] {
  const order = yarns.join();
  const known = inOrderOf.get(stacks);
  if (known?.order === order) return known.inOrder;
  const inOrder = stacks
    .toSorted((one, other) => yarns.indexOf(one.yarn) - yarns.indexOf(other.yarn))
    .flatMap(({ yarn, stacks: ofYarn }) => ofYarn.map((stack) => ({ yarn, stack })))
    .sort((one, other) => one.stack.rows[0] - other.stack.rows[0]);
  inOrderOf.set(stacks, { order, inOrder });
  return inOrder;
}

/** For each of some stacks its place among those of another stretch, by their first rows too; -1 where it is not among them. */
type SameStacks = (stacks: readonly StackOfYarn[], others: readonly StackOfYarn[]) => Int32Array;

/** Stretches that are alike stand where others did that are alike too: these are compared once. */
function comparedOnce(): SameStacks {
  const known = new Map<readonly StackOfYarn[], { readonly others: readonly StackOfYarn[]; readonly at: Int32Array }>();
  return (stacks, others) => {
    const last = known.get(stacks);
    if (last?.others === others) return last.at;
    const at = sameStacks(stacks, others);
    known.set(stacks, { others, at });
    return at;
  };
}

function sameStacks(stacks: readonly StackOfYarn[], others: readonly StackOfYarn[]): Int32Array {
  const at = new Int32Array(stacks.length).fill(-1);
  let from = 0;
  for (let index = 0; index < stacks.length; index++) {
    const own = stacks[index] as StackOfYarn;
    const [row] = own.stack.rows;
    while ((others[from]?.stack.rows[0] ?? Infinity) < row) from++;
    for (let other = from; others[other]?.stack.rows[0] === row; other++) {
      if (!isSameStack(own, others[other] as StackOfYarn)) continue;
      at[index] = other;
      from = other + 1;
      break;
    }
  }
  return at;
}

function isSameStack({ yarn, stack: one }: StackOfYarn, { yarn: otherYarn, stack: other }: StackOfYarn): boolean {
  return (
    yarn === otherYarn &&
    one.rows[1] === other.rows[1] &&
    one.needles.first === other.needles.first &&
    one.needles.last === other.needles.last &&
    one.longest === other.longest &&
    one.longestMm === other.longestMm &&
    one.count === other.count &&
    one.isBetweenGroups === other.isBetweenGroups
  );
}

/** Whether the stitches at both ends of a float of a row belong to two groups that stand on the row. */
function joinsGroups(groups: readonly PlacedGroup[], row: number, first: Slot, last: Slot): boolean {
  if (groups.length < 2) return false;
  const groupAt = (needle: number): PlacedGroup | undefined =>
    groups.find(
      ({ block, firstRow, lastRow }) =>
        firstRow <= row && row <= lastRow && block.first <= needle && needle <= block.last,
    );
  const [left, right] = [groupAt(first - 1), groupAt(last + 1)];
  return left !== undefined && right !== undefined && left !== right;
}
