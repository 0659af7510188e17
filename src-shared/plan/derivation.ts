/**
 * How the numbers of a plan come about: what each was worked out of, as codes
 * and numbers. `words/how.ts` says it.
 */
import { rowsOf, type Gauge, type Piece, type Position, type Region } from '../piece/index.ts';
import { widthOf, type Machine, type Slot } from '../bed/index.ts';
import type { PlacedBand } from '../fabric/index.ts';
import type { SolvedRule } from '../pattern/index.ts';
import { clearOf, sharesOf, type PlacementChoice, type Share } from '../placement/index.ts';
import { longestWithin } from '../strands/index.ts';
import { stitchesPerCm2, type YarnNeed, type YarnUse } from '../yarn/index.ts';
import type { Plan } from './types.ts';

/** What is left of a row for the spaces of a band, and how its rule shares that. */
export interface SpacesDerivation {
  readonly row: number;
  readonly stitches: number;
  readonly judge: 'figure' | 'blocks';
  /** Stitches of the figures, or of the pattern blocks. */
  readonly taken: number;
  readonly inSeam: { readonly left: number; readonly right: number };
  /** `stitches` less both: what all spaces come to, the margins net of the seam. */
  readonly left: number;
  /** The spaces as they stand, the margins with the seam. */
  readonly margins: readonly [left: number, right: number];
  readonly gaps: readonly number[];
  /** By which rule, and what it would give if needles could be split; null by hand. */
  readonly rule: SolvedRule['kind'] | null;
  /** Of a margin, net of the seam, and of a gap (null for one group). */
  readonly margin: Share;
  readonly gap: Share | null;
}

/** Where a group begins: so many plain needles behind the edge or the group before it. */
export interface NeedleDerivation {
  readonly first: Slot;
  readonly row: number;
  /** The first needle of the row, or the last one of the group before. */
  readonly behind: Slot;
  readonly isBehindEdge: boolean;
  /** Plain needles between. */
  readonly plain: number;
  /** Blank columns that count with the space: those of the group before, and its own; none where blocks are spaced. */
  readonly blank: number;
  /** The space as it is counted: both together. */
  readonly space: number;
}

/** Which rows a band takes. */
export type RowsDerivation = {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly height: number;
} & (
  | { readonly by: 'given' }
  /** So many plain rows from an edge of rows `first` … `last`. */
  | {
      readonly by: 'edge';
      readonly edge: 'lower' | 'upper';
      readonly plain: number;
      readonly first: number;
      readonly last: number;
    }
  /** So many plain rows above the hem, which ends on row `hem`. */
  | { readonly by: 'hem'; readonly plain: number; readonly hem: number }
  /** In the middle of rows `first` … `last`. */
  | {
      readonly by: 'middle';
      readonly first: number;
      readonly last: number;
      readonly below: number;
      readonly above: number;
    }
);

/** When the machine is set for the first row of a band. */
export interface SetUpDerivation {
  readonly row: number;
  /** The reading of the row counter; null where no row comes before, or needles are chosen by hand. */
  readonly counter: number | null;
  readonly chooses: Machine['chooses'];
}

/** The longest float at a gauge. */
export interface FloatLimitDerivation {
  readonly gauge: Gauge;
  /** As given; mm are null where only stitches count. */
  readonly stitches: number;
  readonly mm: number | null;
  /** How many whole stitches the length holds; null without one. */
  readonly stitchesInMm: number | null;
  /** The smaller of the two. */
  readonly longest: number;
}

/** The length of one yarn. */
export interface YarnDerivation {
  readonly use: YarnUse;
  /** Yarn in a stitch, at each gauge of the piece: l = √(ks / S), S stitches in a cm² (Munden). */
  readonly loops: readonly {
    readonly gauge: Gauge;
    readonly mm: number;
    readonly perCm2: number;
    readonly ks: number;
  }[];
  /** Where these lengths come from, and by which share they may be off. */
  readonly from: YarnNeed['from'];
  readonly share: number;
  readonly margin: number;
}

/** How the spaces of a band come about, as it is placed by `choice`. */
export function spacesDerivation(band: PlacedBand, choice: PlacementChoice): SpacesDerivation {
  const { question } = band;
  const { judge, seamAllowance, rule } = question;
  const { margins, gaps } = choice[judge];
  const net = clearOf(choice[judge], seamAllowance);
  const left = net.margins[0] + net.margins[1] + gaps.reduce((sum, gap) => sum + gap, 0);
  const stitches = widthOf(question.edges);
  return {
    row: band.firstRow,
    stitches,
    judge,
    taken: stitches - seamAllowance.left - seamAllowance.right - left,
    inSeam: seamAllowance,
    left,
    margins,
    gaps,
    rule: rule.kind === 'by-hand' ? null : rule.kind,
    ...sharesOf(question, left),
  };
}

/** How the first needle of each group comes about. */
export function needleDerivations(band: PlacedBand, choice: PlacementChoice): NeedleDerivation[] {
  const { edges, judge } = band.question;
  const { margins, gaps } = choice[judge];
  return choice.groups.map(({ block }, index): NeedleDerivation => {
    const before = choice.groups[index - 1];
    const behind = before ? before.block.last : edges.first;
    const plain = before ? block.first - behind - 1 : block.first - behind;
    const space = (before ? gaps[index - 1] : margins[0]) ?? plain;
    return {
      first: block.first,
      row: band.firstRow,
      behind,
      isBehindEdge: !before,
      plain,
      blank: space - plain,
      space,
    };
  });
}

/** How the rows of a band come about from where it is to stand. */
export function rowsDerivation(
  band: PlacedBand,
  position: Position,
  { sections }: Pick<Plan, 'sections'>,
): RowsDerivation {
  const { firstRow, lastRow } = band;
  const rows = { firstRow, lastRow, height: lastRow - firstRow + 1 };
  const shown = (): Region => (sections.some(({ name }) => name === 'hem-front') ? 'hem-front' : 'body');
  switch (position.kind) {
    case 'from-row':
      return { ...rows, by: 'given' };
    case 'above-hem':
      return { ...rows, by: 'hem', plain: position.rows, hem: firstRow - position.rows - 1 };
    case 'from-edge': {
      const { first, last } = rowsOf(position.section, sections);
      return { ...rows, by: 'edge', edge: position.edge, plain: position.rows, first, last };
    }
    case 'centred': {
      const { first, last } = rowsOf(position.section === 'shown' ? shown() : position.section, sections);
      return { ...rows, by: 'middle', first, last, below: firstRow - first, above: last - lastRow };
    }
  }
}

/** How the longest float comes about, at each gauge of the piece. */
export function floatLimitDerivations(
  { floatLimit: { stitches, mm } }: Pick<Piece, 'floatLimit'>,
  { gauges }: Pick<Plan, 'gauges'>,
): FloatLimitDerivation[] {
  return gauges.map(({ gauge }) => ({
    gauge,
    stitches,
    mm,
    stitchesInMm: mm === null ? null : longestWithin({ stitches: Infinity, mm }, gauge),
    longest: longestWithin({ stitches, mm }, gauge),
  }));
}

/** How the length of a yarn comes about; null for one that the plan does not use. */
export function yarnDerivation({ yarn }: Pick<Plan, 'yarn'>, index: number): YarnDerivation | null {
  const use = yarn.uses.find((one) => one.yarn === index);
  if (!use) return null;
  const loops = yarn.loops.map(({ gauge, mm }) => ({
    gauge,
    mm,
    perCm2: stitchesPerCm2(gauge),
    ks: stitchesPerCm2(gauge) * (mm / 10) ** 2,
  }));
  return { use, loops, from: yarn.from, share: yarn.share, margin: yarn.margin };
}

/** When the machine is set up for a band. */
export function setUpDerivation(
  { firstRow, setUpAt }: PlacedBand,
  { chooses }: Pick<Machine, 'chooses'>,
): SetUpDerivation {
  return { row: firstRow, counter: setUpAt, chooses };
}
