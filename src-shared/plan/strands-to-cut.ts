/** The strands of main to cut before knitting, those alike counted together. */
import type { WrapStrand } from '../yarn/index.ts';
import type { Plan } from './types.ts';

/** Strands of one length that wrap one edge: in different groups, or on different rows. */
export interface StrandsToCut {
  readonly edge: WrapStrand['edge'];
  readonly firstRow: number;
  readonly lastRow: number;
  /** On all of them together. */
  readonly wraps: number;
  /** Length of each. */
  readonly mm: number;
  /** As the running order calls them, from 1. */
  readonly numbers: readonly number[];
  /** The groups that have balls of their own. */
  readonly groups: readonly number[];
}

/** More lines than this are not read; strands of one length are then cut in one go. */
const MOST_STRAND_LINES = 24;

/**
 * The strands to cut, the longest first, those alike counted together: same
 * rows and length, or, where that leaves many, same length.
 */
export function strandsToCut(plan: Plan): StrandsToCut[] {
  const byRows = counted(plan, ({ firstRow, lastRow }) => `${firstRow} ${lastRow}`);
  const found = byRows.length <= MOST_STRAND_LINES ? byRows : counted(plan, () => '');
  return found.sort((a, b) => cutCm(b) - cutCm(a) || (a.numbers[0] ?? 0) - (b.numbers[0] ?? 0));
}

/** In whole centimetres, as they are cut: those alike in it stand in their order. */
function cutCm({ mm }: Pick<StrandsToCut, 'mm'>): number {
  return Math.ceil(mm / 10);
}

function counted(plan: Plan, rowsOf: (strand: WrapStrand) => string): StrandsToCut[] {
  const found = new Map<string, StrandsToCut>();
  for (const [index, wrapStrand] of plan.wrapStrands.entries()) {
    const { edge, firstRow, lastRow, wraps, mm, strand } = wrapStrand;
    const key = [edge, strand.group === null, cutCm(wrapStrand), rowsOf(wrapStrand)].join(' ');
    const alike = found.get(key) ?? { edge, firstRow, lastRow, wraps: 0, mm, numbers: [], groups: [] };
    const isNew = strand.group !== null && !alike.groups.includes(strand.group);
    found.set(key, {
      ...alike,
      firstRow: Math.min(alike.firstRow, firstRow),
      lastRow: Math.max(alike.lastRow, lastRow),
      wraps: alike.wraps + wraps,
      mm: Math.max(alike.mm, mm),
      numbers: [...alike.numbers, index + 1],
      groups: isNew ? [...alike.groups, strand.group] : alike.groups,
    });
  }
  return [...found.values()];
}
