/** Groups that are moved on the piece: what is read out on the way, and what stops them. */
import { label, type Run, type Slot } from '../../bed/index.ts';
import type { PatternKind } from '../../pattern/index.ts';
import { numbers as n } from './numbers.ts';

/** What a moved group lines up with. */
type InLine = 'centre' | 'equal' | 'seam' | 'line' | 'rows';
/** What is in its way. */
type Stop = 'edge' | 'end' | 'group' | PatternKind;

const IN_LINE: { readonly [Kind in InLine]: string } = {
  centre: 'in the middle of the piece',
  equal: 'spaces alike',
  seam: 'gap as across the seam',
  line: 'in line with another pattern band',
  rows: 'as many rows below as above',
};

const STOPS: { readonly [Kind in Stop]: string } = {
  edge: 'stops at the edge of the piece',
  end: 'stops where the piece ends',
  group: 'stops at the group beside it',
  band: 'stops at another pattern band',
  'all-over': 'stops at an all-over',
};

/** Margin, gaps, margin, each margin with what of it is clear of the seam: `13 (12 clear of the seam)`. */
export function spacesSaid(
  spaces: readonly number[],
  { left, right }: { readonly left: number; readonly right: number },
): string[] {
  return spaces.map((stitches, index) => {
    const taken = index === 0 ? left : index === spaces.length - 1 ? right : 0;
    return taken > 0 && taken <= stitches ? `${stitches} (${stitches - taken} clear of the seam)` : `${stitches}`;
  });
}

export const moving = {
  /**
   * `Group 2 · needles R12–R47 · rows 15–45 · spaces from L to R 13 (12 clear of the seam), 24, 13 (12 clear of the
   * seam) · across the seam 24 · spaces alike`; of a shaped piece the spaces say on which row they are so.
   */
  readout(facts: {
    readonly group: number;
    readonly block: Run;
    readonly firstRow: number;
    readonly lastRow: number;
    readonly spaces: readonly number[];
    readonly seamAllowance: { readonly left: number; readonly right: number };
    /** The row that the spaces are counted on; null where all rows are alike. */
    readonly onRow: number | null;
    readonly acrossSeam: number;
    readonly inLine: readonly InLine[];
    readonly stop: Stop | null;
  }): string {
    const { group, block, firstRow, lastRow, spaces, seamAllowance, onRow, acrossSeam, inLine, stop } = facts;
    return [
      `Group ${group + 1}${stop === null ? '' : ` ${STOPS[stop]}`}`,
      `needles ${n.run(block)}`,
      n.rowSpan(firstRow, lastRow),
      `spaces${onRow === null ? '' : ` on row ${onRow}`} from L to R ${spacesSaid(spaces, seamAllowance).join(', ')}`,
      `across the seam ${acrossSeam}`,
      ...new Set(inLine.map((kind) => IN_LINE[kind])),
    ].join(' · ');
  },
  givenUp: 'The group stays where it was.',
  byButtons: 'Move a group by buttons',
  keep: {
    kept: (first: readonly Slot[]): string =>
      `${first.length === 1 ? 'Needle' : 'Needles'} ${n.list(first.map(label))} kept; changes of the motif or the piece do not move them.`,
    freed: (first: readonly Slot[]): string => `The rule places the groups again, at ${n.list(first.map(label))}.`,
    freedNowhere: 'The rule is back, but cannot place the groups now.',
  },
};
