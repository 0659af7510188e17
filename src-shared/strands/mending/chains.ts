/**
 * Latching up: floats of neighbouring rows, one above the other, are taken
 * through each other with the latch tool into a chain, as a dropped stitch is
 * latched up; its last loop is hung on the needle above, whose next stitch is
 * knitted in the same yarn, so that nothing of it is seen (common practice, no
 * source).
 */
import type { Slot } from '../../bed/index.ts';
import type { Float, StrandId } from '../types.ts';
import { heldAt } from './held.ts';

/** The floats of a strand behind one needle on the rows `firstRow` … `lastRow`, in a chain that is hung on it after the last. */
export interface Chain {
  readonly needle: Slot;
  readonly strand: StrandId;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** A row whose floats may be latched up. */
export interface ChainRow {
  /** 1-based. */
  readonly row: number;
  readonly floats: readonly Float[];
  /** The most stitches that may lie loose. */
  readonly longest: number;
  /** The palette index that a needle knits in the next row, or another number where it is not there. */
  readonly yarnAbove: (needle: Slot) => number;
}

/** How far rows below count when a chain is chosen for those it may go on to. */
const FAR_BELOW = 500;

/**
 * The chains that bring the floats of neighbouring rows, from the bottom up
 * and without a gap, within the limit, as far as it can be done.
 *
 * From the top down: each float that is too long has the fewest new chains,
 * given those that hang above it already, which go on down for nothing. Of
 * those, the ones that can go on furthest; then those of the fewest floats. A
 * float that no chains bring within the limit has none for its sake.
 */
export function chainsOf(rows: readonly ChainRow[]): Chain[] {
  const chains: Growing[] = [];
  const reaches = reachesOf(rows);
  /** The chains that may go on below the row above, by strand and needle. */
  let open = new Map<StrandId, Map<number, Growing>>();
  for (let index = rows.length - 1; index >= 0; index--) {
    const { row, floats, longest } = rows[index] as ChainRow;
    const here = new Map<StrandId, Map<number, Growing>>();
    for (const { strand, first, last, isOver } of floats) {
      const reach = reaches[index]?.get(strand);
      const hanging = open.get(strand);
      const goOn = childOf(here, strand);
      for (let needle: number = first; needle <= last; needle++) {
        const chain = hanging?.get(needle);
        if (chain) goOn.set(needle, chain);
      }
      if (!isOver) continue;
      const needles = heldAt(first, last, longest, (needle) => {
        const { top, bottom } = reach?.get(needle) ?? NOWHERE;
        if (top === null) return null;
        const chain = goOn.get(needle);
        const furtherDown = Math.min(FAR_BELOW, bottom - (rows[0]?.row ?? 1));
        return { holds: chain ? 0 : 1, inTheWay: furtherDown, seen: (chain?.firstRow ?? top + 1) - row };
      });
      for (const needle of needles ?? []) {
        let chain = goOn.get(needle);
        if (!chain) {
          const lastRow = reach?.get(needle)?.top ?? row;
          chain = { needle: needle as Slot, strand, firstRow: row, lastRow };
          chains.push(chain);
          goOn.set(needle, chain);
        }
        chain.firstRow = row;
      }
    }
    open = here;
  }
  return chains.sort((a, b) => a.lastRow - b.lastRow || a.needle - b.needle);
}

type Growing = { -readonly [Key in keyof Chain]: Chain[Key] };

/** The rows up and down to which floats of a strand lie behind a needle without a gap; `top` is null where no stitch of it follows. */
interface Reach {
  readonly top: number | null;
  readonly bottom: number;
}

const NOWHERE: Reach = { top: null, bottom: 0 };

type Reaches = ReadonlyMap<StrandId, ReadonlyMap<number, Reach>>;

/** For each row, how far a chain behind each of its floats could go. */
function reachesOf(rows: readonly ChainRow[]): Reaches[] {
  const bottoms: Map<StrandId, Map<number, number>>[] = [];
  for (const [index, { row, floats }] of rows.entries()) {
    const here = new Map<StrandId, Map<number, number>>();
    for (const { strand, first, last } of floats) {
      const of = childOf(here, strand);
      for (let needle: number = first; needle <= last; needle++) {
        of.set(needle, bottoms[index - 1]?.get(strand)?.get(needle) ?? row);
      }
    }
    bottoms.push(here);
  }
  const reaches: Map<StrandId, Map<number, Reach>>[] = [];
  for (let index = rows.length - 1; index >= 0; index--) {
    const { row, yarnAbove } = rows[index] as ChainRow;
    const here = new Map<StrandId, Map<number, Reach>>();
    for (const [strand, needles] of bottoms[index] ?? []) {
      const of = childOf(here, strand);
      for (const [needle, bottom] of needles) {
        const above = reaches[index + 1]?.get(strand)?.get(needle);
        const isKnittedNext = yarnAbove(needle as Slot) === strand.yarn;
        of.set(needle, { top: above ? above.top : isKnittedNext ? row : null, bottom });
      }
    }
    reaches[index] = here;
  }
  return reaches;
}

function childOf<Key, Value>(map: Map<Key, Map<number, Value>>, key: Key): Map<number, Value> {
  let child = map.get(key);
  if (!child) map.set(key, (child = new Map()));
  return child;
}
