/**
 * Groups and where they can stand: cards of groups, ranked placings, counts that
 * fit. The window is sent them with the Piece bench.
 */
import { label, type Slot } from '../../bed/index.ts';
import type { PatternName } from '../../pattern/index.ts';
import { numbers as n } from './numbers.ts';
import { spacesSaid } from './moving.ts';
import { patterns } from './patterns.ts';

/** `needle L4`, `needles L48 and R12`. */
function needles(first: readonly Slot[]): string {
  return `${first.length === 1 ? 'needle' : 'needles'} ${n.list(first.map(label))}`;
}

export const placings = {
  /** The groups of a pattern band, one a line, and buttons beside each. */
  groups: {
    list: 'Groups from the left',
    group: (index: number): string => `Group ${index + 1}`,
    /** Between the buttons for fewer and more. */
    copies: (across: number): string => n.copies(across),
    fewer: (index: number): string => `One copy fewer in group ${index + 1}`,
    more: (index: number): string => `One copy more in group ${index + 1}`,
    /** All groups in one line, where each is one copy and all are alike. */
    singles: (count: number): string => n.count(count, 'single motif'),
    fewerSingles: 'One single motif fewer',
    moreSingles: 'One single motif more',
    oneByOne: 'One by one',
    together: 'All together',
    /** Of a given margin. */
    clearHint: 'clear of the seam',
    motifOfAll: 'Motif of all groups',
    /** A motif that is chosen by its picture; the one that is taken. */
    chosenMotif: (label: string, name: string): string => `${label}: ${name}`,
  },

  /** The head of all-overs, while the piece has none: which rows each button would take. */
  allOver: {
    none: 'No pattern runs over the whole width.',
    whole: (firstRow: number, lastRow: number): string => `On ${n.rowSpan(firstRow, lastRow)}.`,
    beside: (firstRow: number, lastRow: number): string => `On ${n.rowSpan(firstRow, lastRow)}, where nothing stands.`,
    instead: (gone: readonly PatternName[], firstRow: number, lastRow: number): string =>
      `On ${n.rowSpan(firstRow, lastRow)}; ${patterns.list(gone)} ${gone.length === 1 ? 'goes' : 'go'}.`,
    noRoom: 'No rows are free beside what is there.',
    /** On a button, where the two want the same stitches. */
    giveWay: (name: PatternName): string => `Remove ${patterns.named(name)}`,
  },

  choices: {
    title: 'Possible placings',
    /** One choice, to assistive technology. */
    label(
      spaces: readonly number[],
      seamAllowance: { readonly left: number; readonly right: number },
      row: number | null,
      why: string,
    ): string {
      const on = row === null ? '' : ` on row ${row}`;
      return `Spaces ${spacesSaid(spaces, seamAllowance).join(', ')}${on}. ${why}`;
    },
    /** Under a margin. */
    clear: (stitches: number): string => `${stitches} clear of the seam`,
    /** Above the cards of a shaped piece. */
    onRow: (row: number): string => `Counted on row ${row}, the first of the groups; on other rows the margins differ.`,

    more: (left: number): string => `${left} more`,
    fewer: 'Show fewer',
  },

  /** Beside the buttons that keep needles and give them back to their rule. */
  keep: {
    /** What keeping would keep, and what it would give up. */
    offers: (first: readonly Slot[], rule: string): string =>
      `Kept, ${needles(first)} ${first.length === 1 ? 'stays' : 'stay'} whatever becomes of the motif, the gauge or the piece. Given up: “${rule}” does not space the groups again, and other placings are not offered.`,
    /** What is kept, and what is given up; `rule`: what would space the groups again, or null. */
    kept: (first: readonly Slot[], rule: string | null): string =>
      `By hand: ${needles(first)} ${first.length === 1 ? 'stays' : 'stay'} whatever becomes of the motif, the gauge or the piece. ${
        rule === null
          ? 'No spacing rule found them; one can be chosen above.'
          : `“${rule}” does not space the groups now.`
      }`,
  },

  better: {
    title: 'Better fits',
    isExact: 'The rule comes out exactly on this piece.',
    /** `row`: the one that the stitches are counted on, or null where all rows are alike. */
    widths: (stitches: readonly number[], row: number | null): string => {
      const counts = `**${stitches.join('** or **')}** stitches`;
      return row === null
        ? `It would come out exactly on ${counts}.`
        : `On row ${row}, where the groups stand, it would come out exactly on ${counts}; every other row changes by as many.`;
    },
    noWidth: (reach: number): string => `No piece within ${n.stitches(reach)} lets the rule come out exactly.`,
    byHand: 'By hand nothing is asked, so nothing can come out better.',
    takeWidth: (castOn: number, stitches: number, row: number | null): string =>
      row === null ? `Make it ${n.stitches(stitches)}` : `Cast on ${castOn}, ${stitches} on row ${row}`,
  },

  /** How many single motifs fit, and how each count comes out. */
  counts: {
    title: 'Counts that fit',
    /** `row`: the one that the spaces are counted on, or null where all rows are alike. */
    of(name: string, row: number | null, { left, right }: { readonly left: number; readonly right: number }): string {
      const on = row === null ? '' : `, on row ${row}`;
      const taken = left === right ? `${left}` : `${left} and ${right}`;
      return `${name}, spaced singly${on}${left + right === 0 ? '' : `; the edges with the ${taken} that the seam takes`}`;
    },
    byHand: 'By hand nothing is asked; these are for a seam that continues.',
    copies: 'Copies',
    edges: 'Edges',
    between: 'Between',
    seam: 'Seam',
    exact: 'the rule comes out exactly',
    exactMark: 'exact',
    margins: (left: number, right: number): string => (left === right ? String(left) : `${left}, ${right}`),
    gaps: (least: number, most: number): string => (least === most ? String(least) : `${least} to ${most}`),
    noGap: 'none',
    take: (copies: number): string => `Use ${copies}`,
    takeInFull: (copies: number): string => `Place ${n.copies(copies)}, spaced singly`,
  },
};
