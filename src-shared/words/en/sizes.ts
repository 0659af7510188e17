/** The sizes of a project: their table, and how they are called elsewhere. */
import { label, widthOf, type Slot } from '../../bed/index.ts';
import type { BandInSize, SizeColumn, SizePlaced } from '../../fabric/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { Grade } from '../../piece/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

/** The first and the last, which are one and the same of a straight piece. */
function ends<T extends number | string>(from: readonly T[]): readonly [first: T | '', last: T | ''] {
  return [from[0] ?? '', from.at(-1) ?? ''];
}

export const sizes = {
  title: 'Sizes',
  /** What the bench and the sheet say of the current size. */
  named: (piece: string, size: string): string => `${piece}, size ${size}`,
  free: (number: number): string => `${number}`,
  none: '–',

  wentTo: (name: string): string => `Size ${name} is current.`,

  dialog: {
    title: (project: string): string => `Sizes of ${project}`,
    about: (unit: LengthUnit): string =>
      `Type stitches and rows, or their length in ${unit === 'cm' ? 'cm' : 'inches'}. What you type stays; the fainter number beside it follows, also when the gauge changes. The current size is drawn on the benches and printed. One rule places the groups, each size by itself.`,
    piece: 'Piece',
    current: 'current',
    take: 'Switch to this size',
    takeInFull: (size: string): string => `Switch to size ${size}`,
    remove: 'Remove',
    removeInFull: (size: string): string => `Remove size ${size}`,
    name: (index: number): string => `Name of size ${index + 1}`,
    cell: (line: string, size: string): string => `${line}, size ${size}`,
    add: 'Add a size',
    added: (name: string): string => `Size ${name} was added and is current.`,
    removed: (name: string): string => `Size ${name} was removed.`,
    working: 'working out',
    placing: 'Where the groups stand',
    close: 'Close',
  },

  /** A size that is proposed, until it is added. */
  adding: {
    title: 'New size',
    where: 'It comes',
    /** Between these two; null: none is there. */
    place: (smaller: string | null, larger: string | null): string =>
      smaller === null
        ? `before ${larger}, as the smallest`
        : larger === null
          ? `after ${smaller}, as the largest`
          : `between ${smaller} and ${larger}`,
    name: 'Name',
    proposed(lies: Grade, smaller: string, larger: string | null): string {
      if (larger === null) return `Proposed: the numbers of ${smaller}. Change them as you like before you add it.`;
      const how = {
        between: `halfway between ${smaller} and ${larger}, in whole stitches and rows`,
        above: `the difference from ${smaller} to ${larger} once more`,
        below: `the difference from ${larger} to ${smaller} once more`,
      }[lies];
      return `Proposed: ${how}. Lengths that both were given stay lengths. Change them as you like before you add it.`;
    },
    /** Where shaping cannot be taken from both. */
    shapeOf: (size: string): string => `Its shape is that of ${size}: the two are not shaped alike.`,
    everyPiece: 'Every piece gets the size, with numbers from its own sizes.',
    column: 'proposed',
    add: (name: string): string => `Add size ${name}`,
    cancel: 'Cancel',
    cancelled: 'No size was added.',
  },

  lines: {
    size: 'Size',
    stitches: 'Stitches',
    rows: 'Rows',
    hem: 'Rows of the hem',
    section: (name: string): string => `Rows of ${name}`,
    width: (unit: LengthUnit): string => `Width, ${unit}`,
    height: (unit: LengthUnit): string => `Length, ${unit}`,
    measures: (unit: LengthUnit): string => `Measures, ${unit}`,
    /** Bands and groups are counted from 1; a band is named where there are several. */
    copies: (band: number | null, group: number): string =>
      `Copies, ${band === null ? '' : `pattern band ${band + 1}, `}group ${group + 1}`,
    allCopies: 'Copies',
    band: (index: number): string => `Pattern band ${index + 1}`,
    holds: 'Copies that fit side by side',
    onRows: 'On rows',
    setUp: 'Set up at',
    firstNeedles: 'Left-hand needles',
    margins: 'Margins, with the seam',
    gaps: 'Gaps',
    spaces: 'Margin with seam, gaps, margin',
    seam: 'Across the seam',
    fromRule: 'Distance from the rule',
    bed: 'Beyond the bed',
  },

  /** Shaping row by row, of which so many rows are left out. */
  steps: (lines: string, more: number): string => (more > 0 ? `${lines}\nand ${n.count(more, 'more row')}` : lines),
  /** Beside a count. */
  long: (mm: number, unit: LengthUnit): string => lengths.length(mm, unit),
  stitches: ({ measures: { widths } }: SizeColumn): string => n.fromTo(...ends(widths.map(({ stitches }) => stitches))),
  width: ({ measures: { widths } }: SizeColumn, unit: LengthUnit): string =>
    n.fromTo(...ends(widths.map(({ mm }) => lengths.figure(mm, unit)))),
  height: ({ measures: { lengthMm } }: SizeColumn, unit: LengthUnit): string => lengths.figure(lengthMm, unit),
  measures: (size: SizeColumn, unit: LengthUnit): string => `${sizes.width(size, unit)} × ${sizes.height(size, unit)}`,
  rows: ({ firstRow, lastRow }: BandInSize): string => n.span(firstRow, lastRow),
  setUp: ({ setUpAt }: BandInSize): string => (setUpAt === null ? 'by hand' : `${setUpAt}`),
  needles: (first: readonly Slot[]): string => first.map(label).join(', '),
  margins: ({ spaces: { margins } }: BandInSize): string => [...new Set(margins)].join(', '),
  /** `24`, `18 to 20`, or a dash for a single group. */
  gaps: ({ spaces: { gaps } }: BandInSize): string =>
    gaps.length === 0 ? sizes.none : n.fromTo(Math.min(...gaps), Math.max(...gaps)),
  /** `13 / 24 / 13`. */
  spaces: ({ spaces: { margins, gaps } }: BandInSize): string => [margins[0], ...gaps, margins[1]].join(' / '),
  /** How far whole needles keep it from the rule. */
  fromRule: ({ fromRule, imbalance }: BandInSize): string =>
    fromRule === 0 && imbalance === 0 ? 'exact' : imbalance === 0 ? `${fromRule}` : `${fromRule}, sides ${imbalance}`,
  bed: ({ beyondBed }: SizePlaced, needles: number | null): string =>
    beyondBed === null || needles === null ? 'no' : `${widthOf(beyondBed)} on ${needles}`,
  /** Below the table. */
  problem: (size: string, what: string): string => `Size ${size}: ${what}`,
};
