/** How computed numbers come about, in sentences: shown beside the number on demand. The window is sent them when they are asked for. */
import { label } from '../../bed/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { Measure } from '../../motif/repeat/index.ts';
import type { GradedCount } from '../../piece/index.ts';
import type {
  FloatLimitDerivation,
  NeedleDerivation,
  RowsDerivation,
  SetUpDerivation,
  SpacesDerivation,
  YarnDerivation,
} from '../../plan/index.ts';
import type { Share } from '../../placement/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

const TAKEN: { readonly [Judge in SpacesDerivation['judge']]: string } = {
  figure: 'the figures take',
  blocks: 'the pattern blocks take',
};

/** `44 stitches left ÷ 4`, `(44 stitches left − 2 × 7) ÷ 3`, `12 as asked for`. */
function formula(share: Exclude<Share, { by: 'hand' }>, left: number): string {
  switch (share.by) {
    case 'given':
      return `${share.stitches} as asked for`;
    case 'parts':
      return share.parts === 1
        ? `the ${n.stitches(left)} left`
        : `${n.stitches(left)} left ÷ ${n.plain(share.parts, 2)}`;
    case 'rest': {
      const rest =
        share.times === 0 ? `${n.stitches(left)} left` : `${n.stitches(left)} left − ${share.times} × ${share.given}`;
      return share.parts === 1 ? rest : `${share.times === 0 ? rest : `(${rest})`} ÷ ${share.parts}`;
    }
  }
}

/** `At each edge: 12 = 44 stitches left ÷ 4 + 1 in the seam.` */
function space(where: string, stand: readonly number[], share: Share, left: number, inSeam: number): string {
  const said = n.list([...new Set(stand)].map(String));
  if (share.by === 'hand') return `${where}: ${said}, as the needles leave it.`;
  const seam = inSeam === 0 ? '' : ` + ${inSeam} in the seam`;
  const terms = `${formula(share, left)}${seam}`;
  const exact = (share.by === 'given' ? share.stitches : share.exact) + inSeam;
  if (stand.every((stitches) => stitches === exact)) return `${where}: ${said} = ${terms}.`;
  const isRounded = stand.every((stitches) => Math.abs(stitches - exact) < 2);
  return `${where}: ${said}, for ${terms} = ${n.plain(exact, 2)}; ${isRounded ? 'needles are whole' : 'this placing gives way there'}.`;
}

function spaces(facts: SpacesDerivation): string[] {
  const { row, stitches, judge, taken, inSeam, left, margins, gaps, margin, gap } = facts;
  const seam = inSeam.left + inSeam.right;
  const takes = `${TAKEN[judge]} ${taken}${seam === 0 ? '' : `, the seam ${seam}`}`;
  const isAlike = margins[0] === margins[1] && inSeam.left === inSeam.right;
  return [
    `Row ${row} has ${n.stitches(stitches)}; ${takes}: ${left} ${left === 1 ? 'is' : 'are'} left.`,
    ...(isAlike
      ? [space('At each edge', margins, margin, left, inSeam.left)]
      : [
          space('At the left edge', [margins[0]], margin, left, inSeam.left),
          space('At the right edge', [margins[1]], margin, left, inSeam.right),
        ]),
    ...(gap === null ? [] : [space('Between', gaps, gap, left, 0)]),
  ];
}

function needle({ first, row, behind, isBehindEdge, plain, blank, space: all }: NeedleDerivation): string {
  const start = isBehindEdge ? `row ${row} begins at ${label(behind)}` : `the group before ends at ${label(behind)}`;
  const needles = `${n.count(plain, 'plain needle')} ${plain === 1 ? 'comes' : 'come'} before it`;
  const counted = blank > 0 ? `; with ${n.count(blank, 'blank column')} the space is ${all}` : '';
  return `${label(first)}: ${start}, and ${needles}${counted}.`;
}

function rows(facts: RowsDerivation): string {
  const { firstRow, lastRow, height } = facts;
  const takes = `${n.rows(height)} high: ${n.rowSpan(firstRow, lastRow)}.`;
  switch (facts.by) {
    case 'given':
      return `Row ${firstRow} is given, and the pattern is ${takes}`;
    case 'hem':
      return `The hem ends on row ${facts.hem}, ${n.rows(facts.plain)} above it ${facts.plain === 1 ? 'stays' : 'stay'} plain, and the pattern is ${takes}`;
    case 'edge': {
      const { edge, plain, first, last } = facts;
      const from =
        edge === 'lower'
          ? `above the lower edge of ${n.rowSpan(first, last)}`
          : `below the upper edge of ${n.rowSpan(first, last)}`;
      return `${n.count(plain, 'plain row')} ${from}, and the pattern is ${takes}`;
    }
    case 'middle': {
      const { first, last, below, above } = facts;
      const all = last - first + 1;
      return `In the middle of ${n.rowSpan(first, last)}, which are ${all}: less ${height} of the pattern, ${all - height} are left, ${below} below and ${above} above.`;
    }
  }
}

function setUp({ row, counter, chooses }: SetUpDerivation): string {
  if (chooses === 'by-hand') return 'Needles are chosen by hand, row by row.';
  if (counter === null) return `No row comes before row ${row} that could choose its needles.`;
  return `The needles of row ${row} are chosen while row ${row - 1} is knitted. Before that row the counter reads ${row} − 2 = ${counter}.`;
}

function floatLimit({ gauge, stitches, mm, stitchesInMm, longest }: FloatLimitDerivation, unit: LengthUnit): string {
  if (mm === null || stitchesInMm === null) return `Only stitches count: ${longest}, as given.`;
  const held = `${lengths.short(mm, unit)} hold ${n.count(stitchesInMm, 'whole stitch', 'whole stitches')} at ${lengths.gaugeCounts(gauge, unit)} in ${lengths.gaugeLength(unit)}`;
  return `${held}; ${n.stitches(stitches)} ${stitches === 1 ? 'is' : 'are'} given. The smaller counts: ${longest}.`;
}

function yarn({ use, loops, from, share, margin }: YarnDerivation, unit: LengthUnit): string[] {
  const [loop] = loops;
  const each = loop && loops.length === 1 ? ` of ${n.plain(loop.mm, 1)} mm` : '';
  const parts: readonly (readonly [string, number])[] = [
    [`${n.stitches(use.stitches)}${each}`, use.stitchesMm],
    ['floats', use.floatsMm],
    ['carries', use.carriesMm],
    ['ends', use.tailsMm],
    ['casting off', use.castOffMm],
    ['sewing up', use.sewingMm],
  ];
  const said = parts.filter(([, mm]) => mm > 0).map(([what, mm]) => `${what}: ${lengths.yarn(mm, unit)}`);
  return [
    `${said.join('; ')}.`,
    `Together ${lengths.yarn(use.totalMm, unit)}; with ${n.percent(margin)} more to wind off ${lengths.yarn(use.totalMm * (1 + margin), unit)}.`,
    ...loops.map(
      ({ gauge, mm, perCm2, ks }) =>
        `${n.plain(mm, 1)} mm of yarn in a stitch = 10 × √(${n.plain(ks, 1)} ÷ ${n.plain(perCm2, 2)}), as ${lengths.gaugeCounts(gauge, unit)} in ${lengths.gaugeLength(unit)} are ${n.plain(perCm2, 2)} stitches in 1 cm².`,
    ),
    `The relation is Munden’s, for wool at rest${from === 'unravelled' || from === 'weighed' ? '; its constant is that of your swatch' : ''}. A stitch may take ${n.percent(share)} more or less.${from === 'unravelled' || from === 'weighed' ? '' : ' Measuring a swatch is more accurate.'}`,
  ];
}

/** `Stitches: 112 = 104 + (104 − 96)`, `100 = (96 + 104) ÷ 2`. */
function graded({ what, smaller, larger, lies, proposed }: GradedCount): string {
  const [from, to] = lies === 'above' ? [larger, smaller] : [smaller, larger];
  const terms = lies === 'between' ? `(${smaller} + ${larger}) ÷ 2` : `${from} + (${from} − ${to})`;
  const exact = lies === 'between' ? (smaller + larger) / 2 : 2 * from - to;
  const name = what === 'stitches' ? 'Stitches' : 'Rows';
  if (exact === proposed) return `${name}: ${proposed} = ${terms}.`;
  return `${name}: ${proposed}, near ${terms} = ${n.plain(exact, 1)}, which lengths that were given and whole counts move.`;
}

/** Across or up; `all`: columns or rows that are drawn. */
function again(where: string, one: string, repeat: number, all: number): string {
  if (repeat === all)
    return all === 1 ? `${where}: there is one ${one}.` : `${where}: no fewer than all ${all} ${one}s come again.`;
  const cut = all % repeat;
  const copies = n.copies(Math.floor(all / repeat));
  const rest = cut === 0 ? '' : ` and ${cut} of the next`;
  return `${where}: each ${one} is the same as the one ${repeat} further on, and with no smaller number is that so of all. ${all} ${one}s are ${copies} of ${repeat}${rest}.`;
}

export const how = {
  /** What a mark beside a number is called. */
  label: (what: string): string => `How it comes about: ${what}`,
  of: {
    spaces: 'spaces',
    needles: 'left-hand needles',
    rows: 'rows',
    setUp: 'set-up row',
    floatLimit: 'longest float',
    yarn: (name: string): string => `yarn ${name}`,
    sizes: 'proposed numbers',
    repeat: 'repeat',
  },
  spaces,
  needle,
  rows,
  setUp,
  floatLimit,
  yarn,
  graded,
  repeat: ({ width, height, repeat }: Measure): string[] => [
    again('Across', 'column', repeat.width, width),
    again('Up', 'row', repeat.height, height),
  ],
  /** Beside the fields of the limit. */
  longestFloat: (stitches: number): string => `The longest float is **${n.stitches(stitches)}**.`,
};
