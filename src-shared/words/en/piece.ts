/**
 * The Piece bench: what the piece is, where the groups stand, what is under
 * the pointer. Strong numbers are marked; see ../marked.ts. Its forms are in
 * piece-form.ts.
 */
import { label, type FinishedFace, type Run, type Shows, type Slot } from '../../bed/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { PieceSize, ShapingStep } from '../../piece/index.ts';
import { capitalised } from '../marked.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { pieceForm } from './piece-form.ts';

/** When: `before row 40`; of several, from which row on, as `every 9th row` alone is read as 9 or as 10. */
function often({ row, every, times }: ShapingStep): string {
  if (times === 1) return `before row **${row}**`;
  return `every ${every === 1 ? '' : `${n.ordinal(every)} `}row from row **${row}**, **${n.count(times, 'time')}**`;
}

/**
 * `Increase 1 stitch at each edge every 9th row from row 9, 6 times, then every
 * 10th row from row 64, 3 times; decrease 4 stitches at the left edge before
 * row 140.` Null for straight edges.
 */
function shaping(steps: readonly ShapingStep[]): string | null {
  if (steps.length === 0) return null;
  const phrases = steps.map((step, index) => {
    const before = steps[index - 1];
    const isSameEdge = before?.edge === step.edge;
    const kind = step.stitches > 0 ? 'increase' : 'decrease';
    const what = `${kind} ${n.stitches(Math.abs(step.stitches))} at ${n.edges[step.edge]} `;
    const between = index === 0 ? '' : isSameEdge ? ', then ' : '; ';
    return `${between}${isSameEdge && before.stitches === step.stitches ? '' : what}${often(step)}`;
  });
  return capitalised(`${phrases.join('')}.`);
}

const FACING: { readonly [What in Shows]: { readonly [Face in FinishedFace]: string } } = {
  needles: {
    knit: 'The purl side faces you; the knit side will be seen. Row numbers at the right.',
    purl: 'The purl side faces you and will be seen. Row numbers at the right.',
  },
  worn: {
    knit: 'The knit side, as it will be seen. Needles keep their names at the machine: L stands at the right here.',
    purl: 'The purl side, as it will be seen and as it faces you at the machine.',
  },
};

/** The same in passing, as short as the place at the foot of the window. */
const TURNED: typeof FACING = {
  needles: {
    knit: 'As on the needles: the purl side faces you.',
    purl: 'As on the needles: the purl side faces you.',
  },
  worn: {
    knit: 'As worn: the knit side, with L at the right.',
    purl: 'As worn: the purl side, as it faces you.',
  },
};

export const piece = {
  /** Above the drawing. */
  stage: {
    title: (name: string, shows: Shows): string =>
      `${capitalised(name)}, ${shows === 'needles' ? 'on the needles' : 'as worn'}`,
    /** Which side is seen, and whose left and right the labels are. */
    facing: (face: FinishedFace, shows: Shows): string => FACING[shows][face],
    turned: (face: FinishedFace, shows: Shows): string => TURNED[shows][face],
    wholeInView: 'The whole piece is in view.',
    findingOf: (at: number, of: number): string => `Thing to watch ${at} of ${of}, in the panel.`,
    /** The drawing, to assistive technology. */
    label: (name: string, stitches: number, rows: number, shows: Shows): string =>
      `${name}, ${n.size(stitches, rows)}, ${shows === 'needles' ? 'as on the needles' : 'as worn'}`,
    help: 'Arrow keys move from needle to needle and row to row; Page Up and Page Down move 10 rows; Home and End go to the edges. Full stop and comma choose a group; Shift with an arrow key moves it, with Page Up or Page Down it is raised or lowered alone.',
    spaces: {
      acrossSeam: ['across', 'the seam'],
      onRow: (row: number): string => `on row ${row}`,
      clear: (stitches: number): string[] => [`${stitches} clear of the seam`, `${stitches} clear`],
    },
    fold: 'fold',
    /** In place of the above while something stands in the way. */
    plain: (what: string): string => `${what} The plain piece is shown.`,
  },

  besidePiece: (row: number, needle: Slot): string => `Row ${row} · needle ${label(needle)} · beside the piece`,

  whatItIs: {
    title: 'What it is',
    /** Stitches, rows and size. */
    size({ kind, rows, lengthMm, widths, straightMm }: PieceSize, unit: LengthUnit): string {
      const [castOn, ...others] = widths;
      const stitches = castOn?.stitches ?? 0;
      const wide = (mm: number): string => lengths.figure(mm, unit);
      const long = `${lengths.length(lengthMm, unit)} long`;
      const across = widths.map(({ mm }) => wide(mm));
      switch (kind) {
        case 'rectangle': {
          const [narrowest, widest] = straightMm;
          if (narrowest === widest) return `**${n.size(stitches, rows)}**, ${lengths.across(widest, lengthMm, unit)}.`;
          return `**${n.size(stitches, rows)}**, ${wide(narrowest)} to ${lengths.length(widest, unit)} wide, ${long}.`;
        }
        case 'tapered':
          return `From **${stitches}** to **${n.stitches(others[0]?.stitches ?? 0)}** over **${n.rows(rows)}**: ${across.join(' to ')} ${unit} wide, ${long}.`;
        case 'body': {
          const named = others.map((other) => `**${other.stitches}** at the ${other.at} on row ${other.row}`);
          return `**${n.stitches(stitches)}** at the cast-on, ${named.join(', ')}, over **${n.rows(rows)}**: ${n.list(across)} ${unit} wide, ${long}.`;
        }
        case 'steps':
          return `**${n.stitches(stitches)}** at the cast-on, over **${n.rows(rows)}**: ${across[0]} ${unit} wide there, ${long}.`;
      }
    },
    shaping,
    /** Where the groups stand. */
    groups(first: readonly Slot[], firstRow: number, lastRow: number): string {
      const needles = n.list(first.map((needle) => `**${label(needle)}**`));
      return first.length === 1
        ? `The group starts at needle ${needles}, on rows **${firstRow}–${lastRow}**.`
        : `The groups start at needles ${needles}, on rows **${firstRow}–${lastRow}**.`;
    },
    nothingPlaced: 'This project places nothing on the piece.',
  },

  /** Sizes beside the counts of stitches and rows. */
  lengths: {
    unit: 'Lengths in',
    units: { cm: 'centimetres', in: 'inches' },
    label: (of: string, unit: LengthUnit): string => `${of}, in ${unit === 'cm' ? 'cm' : 'inches'}`,
    /** What a length that was asked for comes to. */
    nearest: (of: 'stitches' | 'rows', count: number, length: number, asked: number, unit: LengthUnit): string =>
      `${of === 'stitches' ? n.stitches(count) : n.rows(count)}: ${length} ${unit}, the nearest to ${asked} ${unit}.`,
  },

  form: pieceForm,
  before: {
    title: 'Before you knit',
    /** The acts that a piece is planned around. */
    landmarks: 'On the way',
    moreLandmarks: (readings: number): string =>
      `And at ${n.count(readings, 'more reading')}; the placement sheet has each of them.`,
  },

  tools: {
    /** Under the icons of the tool rail. */
    short: {
      floats: 'Floats',
      wraps: 'Wraps',
      stitches: 'Stitches',
      turn: 'As worn',
      closed: 'Seamed',
      'purl-side': 'Purl side',
      feeders: 'Feeders',
      sizes: 'Sizes',
    },
  },

  toMotif: 'Go to the motif',

  /** What stands on the needles, for those who cannot see the drawing. */
  group: (index: number, block: Run, firstRow: number, lastRow: number): string =>
    `Group ${index + 1}: needles ${n.run(block)}, ${n.rowSpan(firstRow, lastRow)}`,
};
