/** What will go wrong or must be known, and what can be done about it. */
import { label } from '../../bed/index.ts';
import type {
  Effect,
  FewerYarns,
  Finding,
  FindingCode,
  GatheredFinding,
  NowAndThen,
  Remedy,
  RemedyCode,
  RemedyIntent,
  Sewn,
  TakenRemedy,
} from '../../check/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { Yarn } from '../../project/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { tooWide } from './too-wide.ts';

/** What a sentence needs of what is knitted: a project has it, and a piece with all it is knitted of. */
interface Knitted {
  readonly yarns: readonly Yarn[];
  /** What lengths are told in; cm if left out. */
  readonly unit?: LengthUnit;
}

/** How many findings there are of each severity. */
interface FindingCounts {
  readonly blocking: number;
  readonly warnings: number;
  readonly notes: number;
}

type Of<Code extends FindingCode> = Extract<Finding, { readonly code: Code }>;

/** `The contrast chalk`, `The main yarn slate`. */
function nameOf(yarns: readonly Yarn[], yarn: number, role: 'main' | 'contrast'): string {
  return `The ${role === 'main' ? 'main yarn' : 'contrast'} ${yarns[yarn]?.name ?? ''}`.trimEnd();
}

/** `on rows 61–91, needles L12–R11`. */
function where({ rows, needles }: Of<'long-floats' | 'lined-floats' | 'long-carry' | 'lined-carry'>): string {
  return `on ${n.rowSpan(rows[0], rows[1])}, ${needles.first === needles.last ? 'needle' : 'needles'} ${n.run(needles)}`;
}

function floats(finding: Of<'long-floats' | 'lined-floats'>, yarns: readonly Yarn[], unit: LengthUnit): string {
  const { longest, longestMm, yarn, role } = finding;
  const upTo = finding.count === 1 ? '' : 'up to ';
  return `${nameOf(yarns, yarn, role)} floats over ${upTo}${n.stitches(longest)} (${lengths.short(longestMm, unit)}) ${where(finding)}`;
}

function carries(finding: Of<'long-carry' | 'lined-carry'>, yarns: readonly Yarn[]): string {
  const upTo = finding.count === 1 ? '' : 'up to ';
  return `${nameOf(yarns, finding.yarn, finding.role)} is carried ${upTo}${n.stitches(finding.longest)} sideways ${where(finding)}`;
}

/** The ways out of rows of three yarns or more. */
function fewerYarns(
  count: number,
  laid: number | null,
  { stitches, row, yarn, needles }: FewerYarns,
  yarns: readonly Yarn[],
): string {
  const its = count === 1 ? 'its' : 'their';
  const byHand =
    laid === null
      ? ''
      : `Lay ${its} ${n.count(laid, 'contrast stitch', 'contrast stitches')} by hand${count === 1 ? ' in one pass' : ', each row in one pass'}, or `;
  const runs = needles.slice(0, MOST_RUNS).map((run) => n.run(run));
  const where = `${yarns[yarn]?.name ?? ''} at ${needles.length > MOST_RUNS ? `${runs.join(', ')} and on` : n.list(runs)}`;
  const some = n.stitches(stitches);
  const change =
    count === 1
      ? `change ${some} to another yarn of the row: ${where}.`
      : `change ${some}; begin on row ${row} with ${where}.`;
  return byHand === '' ? `C${change.slice(1)}` : `${byHand}${change}`;
}

/** More runs of needles than this are not read in a sentence. */
const MOST_RUNS = 3;
/** More blank rows than this are not named one by one. */
const MOST_NAMED = 6;

/** `row 7`, `rows 7, 11–12 and 40`, or how many there are between which. */
function blankRows(rows: Finding['rows'], count: number, at: readonly number[]): string {
  if (count === 1) return `row ${rows[0]}`;
  return count <= MOST_NAMED ? `rows ${n.spans(at)}` : `${n.rows(count)} between ${rows[0]} and ${rows[1]}`;
}

const byCode: {
  readonly [Code in FindingCode]: (finding: Of<Code>, yarns: readonly Yarn[], unit: LengthUnit) => string;
} = {
  'long-floats': (finding, yarns, unit) => {
    // A ball for each group takes away what floats between groups, and nothing of what floats inside one.
    const isBetween = finding.isBetweenGroups;
    const others = 'break it with anchor stitches, latch it up or catch it down, or line the piece.';
    return `${floats(finding, yarns, unit)}: too long to leave loose. ${isBetween ? `Use a ball for each group, ${others}` : `B${others.slice(1)}`}`;
  },
  'lined-floats': (finding, yarns, unit) =>
    `${floats(finding, yarns, unit)}; the hem or lining covers it. Keep it slack.`,
  'long-carry': (finding, yarns) =>
    `${carries(finding, yarns)}. ${
      finding.role === 'main'
        ? 'Knit an even number of rows all in contrast, or cut and rejoin it there.'
        : 'Cut and rejoin it there, or use a second strand.'
    }`,
  'lined-carry': (finding, yarns) => `${carries(finding, yarns)}; the hem or lining covers it. Keep it slack.`,
  'floats-unbroken': ({ rows, pattern, wished, longest, count }) => {
    const place = `${pattern.kind === 'band' ? 'pattern band' : 'all-over'} ${pattern.number + 1}`;
    const floats = count === 1 ? 'One float' : n.count(count, 'float');
    return `${floats} of ${place} on ${n.rowSpan(...rows)} ${count === 1 ? 'stays' : 'stay'} over the ${n.stitches(wished)} asked for, ${count === 1 ? 'at' : 'the longest'} ${longest}: an anchor there would touch the figure, or stand above another. Hook it up, or change a cell.`;
  },
  'long-way-up': ({ rows, role, yarn, up, upMm, count }, yarns, unit) => {
    const strands = count === 1 ? '' : `, all ${count} strands of it`;
    return `${nameOf(yarns, yarn, role)} is next used ${n.rows(up)} (${lengths.short(upMm, unit)}) up, too far to be carried: cut it after row ${rows[0]} and join it again on row ${rows[1]}${strands}.`;
  },
  'cut-aside': ({ rows, role, yarn, aside, count }, yarns) =>
    count === 1
      ? `${nameOf(yarns, yarn, role)} is cut after row ${rows[0]} and joined again on row ${rows[1]}, ${n.stitches(aside)} aside.`
      : `${nameOf(yarns, yarn, role)} is cut and joined again ${count} times on ${n.rowSpan(rows[0], rows[1])}, up to ${n.stitches(aside)} aside.`,
  'wider-than-bed': (finding, _yarns, unit) => tooWide.text(finding, unit),
  'many-yarns': ({ rows, yarns, count, laid, change }, known) =>
    `${count === 1 ? `Row ${rows[0]} knits` : `${n.rows(count)} between ${rows[0]} and ${rows[1]} knit`} ${count === 1 ? '' : 'up to '}${yarns} yarns, and one pass of the carriage feeds two. ${fewerYarns(count, laid, change, known)}`,
  'contrast-to-edges': ({ rows, canBeOff }) =>
    canBeOff
      ? `End-needle selection is on, so the contrast floats to both edges on ${n.rowSpan(...rows)}. For motifs that stand alone, switch it off.`
      : `This machine always selects the end needles, so the contrast floats to both edges on ${n.rowSpan(...rows)}. Latch it up or catch it down, or let the pattern reach nearer to the edges.`,
  'contrast-loose-across': ({ rows, count, at }) =>
    `The pattern is blank on ${blankRows(rows, count, at)}, and with end-needle selection on the contrast knits the edge needles there and lies loose from edge to edge. Latch it up or catch it down, or draw figure on ${count === 1 ? 'it' : 'them'}.`,
  'contrast-not-bound-in': ({ rows }) =>
    `End-needle selection is off on ${n.rowSpan(...rows)}, so the contrast of the all-over pattern is not bound in where it turns short of an edge, and all-over patterns are not wrapped. Switch it on.`,
  'end-needles-seen': ({ rows, edge, count }) =>
    `End-needle selection knits contrast at ${edge === 'both' ? 'both edges' : `the ${edge} edge`} on ${count === 1 ? `row ${rows[0]}` : `${n.rows(count)} from ${rows[0]} to ${rows[1]}`}, and no stitch goes into a seam there, so it shows as a line along the edge. Set a seam allowance of 1 stitch at each edge, or cover the edge with a band.`,
  'end-needles-always': ({ rows, isAllOver }) =>
    `This machine always selects the end needles: on ${n.rowSpan(...rows)} the edge needles knit contrast, which floats from the ${isAllOver ? 'pattern' : 'groups'} to both edges, though the pattern asks for end-needle selection off.`,
  'end-needles-none': ({ rows, isAllOver }) =>
    `This machine does not select the end needles, and the pattern on ${n.rowSpan(...rows)} asks for it: the contrast turns at the edge of the figure${
      isAllOver
        ? ' and is not bound in there. Let each row have figure near both edges'
        : ', and the needle beside it is wrapped on each row'
    }.`,
  'cut-copies': ({ rows, copies, group }) =>
    `Shaping cuts ${n.copies(copies)} of group ${group + 1} on ${n.rowSpan(...rows)}. Leave out a copy, or move the group inwards.`,
  'copies-left-out': ({ rows, copies, group }) =>
    `${n.copies(copies)} of group ${group + 1} ${copies === 1 ? 'is' : 'are'} left out on ${n.rowSpan(...rows)}, where shaping would cut ${copies === 1 ? 'it' : 'them'}.`,
  'fill-cut': ({ rows, copies, whole, allOver }) =>
    `The edges cut ${n.copies(copies)} of all-over ${allOver + 1} on ${n.rowSpan(...rows)}; ${whole} ${whole === 1 ? 'is' : 'are'} whole. To knit whole ones only, leave cut copies out.`,
  'fill-left-out': ({ rows, copies, whole, allOver }) =>
    `${n.copies(copies)} of all-over ${allOver + 1} ${copies === 1 ? 'is' : 'are'} left out on ${n.rowSpan(...rows)}, where the edges would cut ${copies === 1 ? 'it' : 'them'}; ${whole} ${whole === 1 ? 'is' : 'are'} whole.`,
  'figure-in-seam': ({ rows, side, stitches }) =>
    `On ${n.rowSpan(...rows)} the pattern reaches ${n.stitches(stitches)} into the ${side} seam, where it will not be seen.`,
  'odd-shaping': ({ rows, at, edge, even }) =>
    `One stitch is shaped at the ${edge} edge alone, on row ${rows[0]}: the stitches at the ${at} differ by an odd number from those below. With ${even.join(' or ')} there both edges are shaped alike.`,
  'hem-loops': ({ rows, loops, hungOn }) =>
    `The hem begins with ${n.count(loops, 'loop')}, and after row ${rows[0]} they are to be hung on ${n.needles(hungOn)}. Shape above the hem, so that each needle takes one loop.`,
  'no-set-up-row': () =>
    'The pattern begins on row 1, so there is no row before it on which its needles are selected, and on this machine none can be pushed by hand. Start it on row 2 or above, or begin the piece on waste yarn.',
  'pattern-on-joining-row': ({ rows }) =>
    `Row ${rows[0]} joins the hem and is knitted plain, but it is in pattern. Let the pattern end below it, and begin on row ${rows[0] + 1} or above.`,
  'shaping-on-joining-row': ({ rows }) =>
    `Row ${rows[0]} joins the hem, and each of its needles takes a loop of the cast-on, so it is not shaped. Shape from row ${rows[0] + 1} on.`,
  'shaping-away-from-carriage': ({ rows, edge, stitches }) =>
    `Before row ${rows[0]} ${n.stitches(Math.abs(stitches))} ${stitches > 0 ? 'would be cast on' : 'would be cast off'} at the ${edge}, but the yarn and the carriage are at the other side, and no row follows. Shape a row earlier, or knit a row more.`,
  'balls-unseen': ({ rows, yarns, count }) =>
    `${count === 1 ? `Row ${rows[0]} takes` : `${n.rows(count)} between ${rows[0]} and ${rows[1]} take`} ${count === 1 ? '' : 'up to '}${yarns} yarns or balls: all but two are laid by hand into the hooks of needles that stand forward, and on this machine none does. Draw them in two yarns a row, from one ball.`,
  'edges-unseen': ({ rows, count, seam }) =>
    `${count === 1 ? `Pattern row ${rows[0]} is` : `${n.count(count, 'pattern row')} between ${rows[0]} and ${rows[1]} are`} shaped, and on this machine no needle can be pushed to put the edges right: the new edge stitch knits the main yarn in that row, and with end needles on, the one beside a stitch that was made knits contrast. ${seam ? 'Keep it in the seam.' : 'That is more than a seam takes: shape on rows without pattern.'}`,
  'off-fixed-places': ({ rows, one, other, repeat }) =>
    `On row ${rows[0]} needles ${label(one)} and ${label(other)} would be selected differently, but on this machine needles ${repeat} apart are selected alike. Use copies that fit into ${repeat} needles, and groups of which each begins ${repeat} needles after the one before it; or choose the needles by hand.`,
  'mirrored-lettering': ({ group, motif, isMirrored }) =>
    `${motif} in group ${group + 1} would be seen mirrored when worn, and it has lettering. ${
      isMirrored ? 'Do not mirror the group.' : 'Let its chart show the piece as worn, or mirror the group.'
    }`,
  'mirrored-lettering-in-fill': ({ allOver, motif, isMirrored }) =>
    `${motif} in all-over ${allOver + 1} would be seen mirrored when worn, and it has lettering. ${
      isMirrored ? 'Do not mirror the all-over.' : 'Let its chart show the piece as worn, or mirror the all-over.'
    }`,
  'infant-floats': ({ rows, count }) =>
    `This piece is for an infant and has ${n.count(count, 'float')} on ${n.rowSpan(...rows)}. ${INFANT}`,
  'faint-contrast': ({ yarn, ratio }, yarns) =>
    `${nameOf(yarns, yarn, 'contrast')} is nearly as light as the main yarn (contrast ${n.plain(ratio, 2)} to 1), so the motif will hardly show. Choose a lighter or darker one.`,
};

const INFANT =
  'Loose threads can wrap round fingers and toes and cut off the blood: have none at hands and feet, and line, latch up or catch down the rest.';

const MACHINE =
  'Keep loose sleeves and hair away from the moving carriage. Hooks and latches are sharp, the tension mast flicks back and weights fall. Push a wrapped needle back before the carriage moves.';

function left({ before, after }: NowAndThen): string {
  if (after === 0) return 'Leaves no long float or carry';
  return `Leaves ${after} of ${n.count(before, 'long float or carry', 'long floats and carries')}`;
}

/** Of a remedy for rows of many yarns: those that are left, and what becomes longer for it. */
function leftOfManyYarns({ manyYarns: { before, after }, long }: Effect): string {
  const more = long.after - long.before;
  const rows =
    after === 0
      ? 'Leaves no row of three yarns or more'
      : `Leaves ${after} of ${n.rows(before)} of three yarns or more`;
  return more > 0 ? `${rows}, and ${n.count(more, 'more long float or carry', 'more long floats and carries')}` : rows;
}

/** `It takes 2 balls, 3 more wraps and 1.2 m more yarn.` Null where it costs nothing. */
function cost(effect: Effect, unit: LengthUnit): string | null {
  const { balls, wrapsAdded, liftsAdded, chainsAdded, cutsAdded, mmAdded, cellsChanged } = effect;
  const costs = [
    balls.after === balls.before ? null : n.count(balls.after, 'ball'),
    wrapsAdded > 0 ? n.count(wrapsAdded, 'more wrap') : null,
    liftsAdded > 0 ? n.count(liftsAdded, 'float hooked up', 'floats hooked up') : null,
    chainsAdded > 0 ? n.count(chainsAdded, 'chain latched up', 'chains latched up') : null,
    cutsAdded > 0 ? n.count(cutsAdded, 'cut') : null,
    cellsChanged ? n.count(cellsChanged, 'changed stitch', 'changed stitches') : null,
    mmAdded >= LEAST_YARN_MM ? `${lengths.yarn(mmAdded, unit)} more yarn` : null,
  ].filter((each) => each !== null);
  return costs.length === 0 ? null : `It takes ${n.list(costs)}.`;
}

/** Less is told by nobody who winds a ball. */
const LEAST_YARN_MM = 500;

/** What a remedy is called. */
const remedyLabels: { readonly [Code in RemedyCode]: string } = {
  'own-balls': 'Give each group its own ball',
  'other-placing': 'Take another placing',
  'move-groups': 'Move the groups closer together',
  'mirrored-order': 'Mirror every second group',
  'line-section': 'Line the section',
  lining: 'Line the piece',
  'end-needles-off': 'Switch end-needle selection off',
  anchors: 'Break floats with anchor stitches',
  'hook-up': 'Hook floats up, row by row',
  'latch-up': 'Latch floats up in columns',
  'end-needles-on': 'Carry it at the edges, with end-needle selection on',
  'cut-carries': 'Cut and rejoin it',
  'other-yarn': 'Knit each row’s rarest yarn in another of the row',
};

/** ` in pattern band 2`, where there are several. */
function inBands(bands: readonly number[], hasSeveralBands: boolean): string {
  if (!hasSeveralBands) return '';
  const numbers = bands.map((band) => band + 1);
  return bands.length === 1 ? ` in pattern band ${numbers[0]}` : ` in ${n.count(bands.length, 'pattern band')}`;
}

export const findings = {
  /** One or two sentences. */
  text(finding: Finding, { yarns, unit = 'cm' }: Knitted): string {
    const say = byCode[finding.code] as (finding: Finding, yarns: readonly Yarn[], unit: LengthUnit) => string;
    return say(finding, yarns, unit);
  },
  /** The sentence, and how often the same comes again. */
  gathered({ finding, more, rows }: GatheredFinding, knitted: Knitted): string {
    const sentence = findings.text(finding, knitted);
    if (more === 0) return sentence;
    return `${sentence} The same comes in ${n.count(more, 'more place')}, ${n.rowSpan(...rows)}.`;
  },
  /** Above those that a person leaves as they are. */
  leftTitle: (findings: number): string => `Left as ${findings === 1 ? 'it is' : 'they are'}`,
  warning: 'To mend',
  note: 'Good to know',
  /** A piece that the bed cannot hold, and what can be done. */
  tooWide,
  /** The line that says how many there are, and goes from one to the next. */
  line: {
    label: 'What was found',
    /** `3 things to watch, 1 that cannot be knitted, 2 to know`. */
    counts({ blocking, warnings, notes }: FindingCounts): string {
      const parts = [
        warnings > 0 ? `${n.count(warnings, 'thing')} to watch` : null,
        blocking > 0 ? `${blocking} that cannot be knitted` : null,
        notes > 0 ? `${notes} to know` : null,
      ].filter((part) => part !== null);
      return parts.length === 0 ? 'Nothing stands in the way.' : parts.join(', ');
    },
    looking: 'Looking ahead…',
    /** One of them, to assistive technology. */
    at: (number: number, of: number): string => `${number} of ${of}`,
  },
  panel: {
    title: 'What to watch',
    help: 'What would help',
    working: 'Working out what would help…',
    noHelp: 'Nothing here leaves fewer of them. Latch them up or catch them down, or draw them shorter.',
    /** After the one that speaks for all. */
    alike: (places: number): string => `And at **${n.count(places, 'more place')}**; the drawing shows each of them.`,
    show: 'Show it',
    showPurl: 'Show it on the purl side',
    leave: 'Leave it',
    nowLeft: 'Left as it is, until it lies elsewhere.',
    watch: 'Watch it again',
    nowWatched: 'Watched again.',
    /** Those that are left, folded away. */
    left: (findings: number): string => `${findings} left as ${findings === 1 ? 'it is' : 'they are'}`,
    more: (findings: number): string => `Show ${n.count(findings, 'more thing')} to watch`,
    nothing: 'Nothing stands in the way.',
    /** Rows of three yarns or more, knitted as they are. */
    byHand: {
      lay: (rows: number): string => (rows === 1 ? 'Lay the row by hand' : 'Lay these rows by hand'),
      effect: (rows: number, stitches: number): string =>
        `${n.count(stitches, 'contrast stitch', 'contrast stitches')} to lay on ${n.rows(rows)}, each row in one pass; no cell changes. The steps name the needles of each ball.`,
      nowLaid: (rows: number, stitches: number): string =>
        `To be laid by hand: ${n.count(stitches, 'stitch', 'stitches')} on ${n.rows(rows)}.`,
    },
    /** Where no other yarn of the row can be taken for all copies alike. */
    noOtherYarn: 'No other yarn of these rows fits in all copies: change cells on the Motif bench.',
  },
  caution: {
    infant: INFANT,
    machine: MACHINE,
  },
  seam: {
    set: ({ left, right }: Sewn): string =>
      `Set a seam allowance of ${n.stitches(left)}${left === right ? '' : ` at the left and ${right} at the right`}`,
    taken: ({ left, right }: Sewn): string =>
      `The seam allowance is ${n.stitches(left)} at ${left === right ? 'each edge' : `the left and ${right} at the right`}.`,
  },
  remedy: {
    label: remedyLabels,
    /** Remedies that are folded away. */
    more: (remedies: number): string => n.count(remedies, 'more remedy', 'more remedies'),
    picture: {
      before: 'Now',
      after: 'Then',
      count: (floats: number): string => (floats === 0 ? 'no long float' : n.count(floats, 'long float')),
      yarns: (most: number): string => `up to ${n.count(most, 'yarn')} in a row`,
    },
    /** What it does, as a button says it; of several bands it says which it is about. */
    name: (intent: RemedyIntent, hasSeveralBands: boolean): string =>
      `${remedyLabels[intent.code]}${
        'bands' in intent
          ? inBands(
              intent.bands.map((each) => (typeof each === 'number' ? each : each.band)),
              hasSeveralBands,
            )
          : ''
      }${intent.code === 'anchors' ? `: none over ${intent.longest}` : ''}`,
    /** What stands already, and what it does. */
    taken(taken: TakenRemedy): string {
      switch (taken.code) {
        case 'own-balls':
          return `Each of ${n.count(taken.groups, 'group')} in pattern band ${taken.band + 1} has its own ball: nothing is carried between them.`;
        case 'lining':
          return `The piece is lined: the lining covers ${n.count(taken.covered, 'long float or carry', 'long floats and carries')}.`;
      }
    },
    /** What would be left, and what it costs. */
    effect({ intent, effect }: Remedy, unit: LengthUnit = 'cm'): string {
      const { before, after } = effect.long;
      if (intent.code === 'other-yarn') {
        const drawn = 'The motif changes in all its copies.';
        return [`${leftOfManyYarns(effect)}.`, cost(effect, unit), drawn].filter((each) => each !== null).join(' ');
      }
      const leaves =
        intent.code === 'lining' || intent.code === 'line-section'
          ? `The lining covers ${before - after} of ${n.count(before, 'long float or carry', 'long floats and carries')}`
          : left(effect.long);
      const costs = cost(effect, unit);
      return costs === null ? `${leaves}.` : `${leaves}. ${costs}`;
    },
  },
};
