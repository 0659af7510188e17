/** Floats of the rows just knitted, lifted onto the needles above them or latched up, before the hem is hung. */
import type { PlanRow } from '../types.ts';
import { numberOf, type BallNumbers } from './ball-numbers.ts';
import type { Act } from './types.ts';
import type { Work } from './work.ts';

export function mendLongFloats(work: Work, numbers: BallNumbers): void {
  for (const row of work.plan.rows) {
    const acts = [...row.lifts.map(hookUp), ...row.chains.map((chain) => latchUp(work, numbers, row, chain))];
    acts.sort((one, other) => one.needle - other.needle);
    for (const act of acts) work.do(row.row, act);
  }
}

type MendingAct = Extract<Act, { readonly kind: 'hook-up' | 'latch-up' }>;
type Chain = PlanRow['chains'][number];

function hookUp({ needle, strand, float }: PlanRow['lifts'][number]): MendingAct {
  return { kind: 'hook-up', needle, yarn: strand.yarn, float };
}

/** A chain of one float is a float hooked up. */
function latchUp(work: Work, numbers: BallNumbers, { floats }: PlanRow, chain: Chain): MendingAct {
  const { needle, strand, firstRow: first, lastRow: last } = chain;
  const own = floats.find((float) => float.strand === strand && float.held.includes(needle));
  if (first === last && own)
    return { kind: 'hook-up', needle, yarn: strand.yarn, float: { first: own.first, last: own.last } };
  const ball = isBesideOthers(work, chain) ? numberOf(numbers, strand) : null;
  return { kind: 'latch-up', needle, yarn: strand.yarn, ...(ball === null ? {} : { ball }), first, last };
}

/** Whether another length of the yarn lies behind the needle of a chain, so that the yarn alone does not say which is meant. */
function isBesideOthers({ plan }: Work, { needle, strand, firstRow, lastRow }: Chain): boolean {
  return plan.rows
    .slice(firstRow - 1, lastRow)
    .some(({ floats }) =>
      floats.some(
        (float) =>
          float.strand !== strand && float.strand.yarn === strand.yarn && needle >= float.first && needle <= float.last,
      ),
    );
}
