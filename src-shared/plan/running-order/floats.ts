/** Floats of the rows just knitted, lifted onto the needles above them or latched up, before the hem is hung. */
import type { PlanRow } from '../types.ts';
import type { Act } from './types.ts';
import type { Work } from './work.ts';

export function mendLongFloats(work: Work): void {
  for (const row of work.plan.rows) {
    const acts = [...row.lifts.map(hookUp), ...row.chains.map((chain) => latchUp(row, chain))];
    acts.sort((one, other) => one.needle - other.needle);
    for (const act of acts) work.do(row.row, act);
  }
}

type MendingAct = Extract<Act, { readonly kind: 'hook-up' | 'latch-up' }>;

function hookUp({ needle, strand, float }: PlanRow['lifts'][number]): MendingAct {
  return { kind: 'hook-up', needle, yarn: strand.yarn, float };
}

/** A chain of one float is a float hooked up. */
function latchUp({ floats }: PlanRow, { needle, strand, firstRow, lastRow }: PlanRow['chains'][number]): MendingAct {
  const own = floats.find((float) => float.strand === strand && float.held.includes(needle));
  return firstRow === lastRow && own
    ? { kind: 'hook-up', needle, yarn: strand.yarn, float: { first: own.first, last: own.last } }
    : { kind: 'latch-up', needle, yarn: strand.yarn, first: firstRow, last: lastRow };
}
