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
}

/** `before`: what was told before cells were painted, or of any other plan. Floats across blank rows in the open are told as `contrast-loose-across`. */
export function toldFloats(all: Inspected, before: ToldFloats | null): ToldFloats {
  const { kept, anew } = before && isToldAlike(all, before.of) ? keptOf(all.rows, before) : NOTHING_KEPT;
  const stretches = [...kept, ...stretchesOf(all, anew)].sort((one, other) => one.first - other.first);
  const yarns = { inOpen: yarnsOf(stretches, false), lined: yarnsOf(stretches, true) };
  const isInOrder = `${yarns.inOpen}/${yarns.lined}` === `${before?.yarns.inOpen}/${before?.yarns.lined}`;
  const told = stretches.map((stretch) =>
    isInOrder && isTold(stretch) ? stretch : tell(stretch, yarns, all.piece.mainYarn),
  );
  return { of: all, stretches: told, yarns };
}

function isTold(stretch: FoundStretch | ToldStretch): stretch is ToldStretch {
  return 'findings' in stretch;
}

const NOTHING_KEPT = { kept: [] as readonly ToldStretch[], anew: null };

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

/** The stretches that no changed row lies in or next to, and which rows (1 in `anew`, by their number) are looked at anew. */
function keptOf(
  rows: readonly PlanRow[],
  { of, stretches }: ToldFloats,
): { readonly kept: readonly ToldStretch[]; readonly anew: Uint8Array } {
  const anew = new Uint8Array(rows.length + 1);
  const changed: number[] = [];
  for (let index = 0; index < rows.length; index++) if (rows[index] !== of.rows[index]) changed.push(index + 1);
  for (const row of changed) anew[row] = 1;
  let next = 0;
  const kept = stretches.filter(({ first, last }) => {
    while ((changed[next] ?? Infinity) < first - 1) next++;
    const stays = (changed[next] ?? Infinity) > last + 1;
    if (!stays) anew.fill(1, first, last + 1);
    return stays;
  });
  return { kept, anew };
}

/** The stretches of the rows that are 1 in `anew`, or of all. */
function stretchesOf({ sections, rows, groups }: Inspected, anew: Uint8Array | null): FoundStretch[] {
  const isBetweenGroups: BetweenGroups = ({ strand, first, last }, row) =>
    strand.role === 'contrast' && strand.group === null && joinsGroups(groups, row, first, last);
  const found: FoundStretch[] = [];
  let [stretch, first, isLined]: [Stretch | null, number, boolean] = [null, 0, false];
  const endBefore = (row: number): void => {
    if (!stretch) return;
    const stacks = groups.length > 1 ? stretch.gathered(first, isBetweenGroups) : stretch.stacks;
    found.push({ first, last: row - 1, isLined, stacks });
    stretch = null;
  };
  for (let row = 1; row <= rows.length; row++) {
    if (anew?.[row] === 0) {
      endBefore(row);
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

function tell({ first, last, isLined, stacks }: FoundStretch, yarns: Yarns, main: number): ToldStretch {
  const inOrder = stacksInOrder(stacks, isLined ? yarns.lined : yarns.inOpen);
  const findings = inOrder.map(({ yarn, stack }): Finding => {
    const { needles, longest, longestMm, count, isBetweenGroups } = stack;
    const rows = [stack.rows[0] + first, stack.rows[1] + first] as const;
    const role = yarn === main ? 'main' : 'contrast';
    return isLined
      ? { code: 'lined-floats', role, yarn, rows, needles, longest, longestMm, count }
      : { code: 'long-floats', role, yarn, rows, needles, longest, longestMm, count, isBetweenGroups };
  });
  return { first, last, isLined, stacks, findings };
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
