/** What lies loose of a float: all of it, or the parts between the needles at which it is held. */
import type { Run, Slot } from '../bed/index.ts';
import { longestLoose } from './mending/held.ts';
import type { Float } from './types.ts';

type Held = Pick<Float, 'first' | 'last' | 'held'>;

/** A part of a float, over the needles `first` … `last`; where two neighbours hold it over none, and `last` is before `first`. */
export interface LoosePart extends Run {
  /** In stitches. */
  readonly stitches: number;
  /** At this end it is held by a needle, hooked or latched up, and does not come from a stitch. */
  readonly isHeldAt: { readonly left: boolean; readonly right: boolean };
}

const NOWHERE = { left: false, right: false } as const;

/** The parts of a float that lie loose, from left to right: one where nothing holds it. */
export function looseParts({ first, last, held }: Held): LoosePart[] {
  if (held.length === 0) return [{ first, last, stitches: last - first + 1, isHeldAt: NOWHERE }];
  const ends = [first - 1, ...held, last + 1];
  return ends.slice(1).map((end, index) => {
    const begin = ends[index] as number;
    return {
      first: (begin + 1) as Slot,
      last: (end - 1) as Slot,
      stitches: end - begin - 1,
      isHeldAt: { left: index > 0, right: index < held.length },
    };
  });
}

/** The stitches of the longest part that lies loose: what catches a finger, and what is held against the limit. */
export function looseStitches({ first, last, held }: Held): number {
  return longestLoose(first, last, held);
}
