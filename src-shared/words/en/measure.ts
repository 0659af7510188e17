/**
 * What a drawing is, in sentences. Strong numbers are marked; see ../marked.ts.
 */
import {
  clippedCopies,
  compareCuts,
  openSlips,
  proposedOf,
  runsOf,
  type Blank,
  type Block,
  type Measure,
  type Version,
} from '../../motif/repeat/index.ts';
import { capitalised } from '../marked.ts';
import { numbers as n } from './numbers.ts';

/** `The chart is **48 stitches × 48 rows**.` */
function size({ width, height }: Measure): string {
  return `The chart is **${n.size(width, height)}**.`;
}

function repeat({ width, height, repeat: unit }: Measure): string {
  const phrase = `The repeat is **${n.size(unit.width, unit.height)}**`;
  return unit.width === width && unit.height === height ? `${phrase}, all that is drawn.` : `${phrase}.`;
}

/** How many whole copies are drawn, and where the last one is cut; null if the drawing is one copy. */
function copies(measured: Measure): string | null {
  const { width, height, repeat: unit } = measured;
  if (unit.width === width && unit.height === height) return null;
  const across = Math.floor(width / unit.width);
  const up = Math.floor(height / unit.height);
  const cut = clippedCopies(measured);
  const cuts = [
    cut.stitches === 0 ? '' : `at the right after ${cut.stitches} of its ${n.stitches(unit.width)}`,
    cut.rows === 0 ? '' : `at the top after ${cut.rows} of its ${n.rows(unit.height)}`,
  ].filter((place) => place !== '');
  const whole = `It is drawn **${across} × ${up}** times`;
  return cuts.length === 0 ? `${whole}.` : `${whole}, and **the last copy is cut** ${n.list(cuts)}.`;
}

/** `first column is`, `first 2 columns and the last one are`; null where neither edge is blank. */
function blankColumns({ left, right }: Blank): string | null {
  if (left === 0 && right === 0) return null;
  if (right === 0) return left === 1 ? 'first column is' : `first ${left} columns are`;
  if (left === 0) return right === 1 ? 'last column is' : `last ${right} columns are`;
  if (left === 1 && right === 1) return 'first and last columns are';
  if (left === 1) return `first column and the last ${right} are`;
  if (right === 1) return `first ${left} columns and the last one are`;
  return `first ${left} and last ${right} columns are`;
}

/**
 * Which edge columns are blank and what that does to neighbouring copies. What
 * is blank at the right of a cut copy says nothing about a whole one, so copies
 * are spoken of only where the repeat divides the drawing.
 */
function blank({ blank: edges, repeat: unit }: Measure): string {
  if (!edges) return '**There is no figure**: every cell is ground.';
  const columns = blankColumns(edges);
  const apart = edges.left + edges.right;
  if (columns === null) {
    return unit.dividesAcross ? 'No edge column is blank: **copies touch**.' : 'No edge column is blank.';
  }
  const phrase = `The **${columns} blank** all the way up`;
  if (!unit.dividesAcross) return `${phrase}.`;
  return `${phrase}: each figure is **${n.columns(unit.width - apart)}** wide, copies stand **${apart} apart**.`;
}

/** Blank rows below and above; null where there are none. */
function blankRows({ blank: edges }: Measure): string | null {
  if (!edges || (edges.bottom === 0 && edges.top === 0)) return null;
  const places = [
    edges.bottom === 0 ? '' : `${n.rows(edges.bottom)} at the bottom`,
    edges.top === 0 ? '' : `${n.rows(edges.top)} at the top`,
  ].filter((place) => place !== '');
  return `Blank from edge to edge: ${n.list(places)}.`;
}

/** How the copies are moved against each other, the way that cuts the figure least first; null if they stand straight. */
function step({ blocks: [first, second] }: Measure): string | null {
  if (!first || !second) return null;
  const isHalf = first.step * 2 === (first.laid === 'courses' ? first.width : first.height);
  const start = isHalf ? 'The copies are stepped by half' : 'The copies are stepped';
  const seen = second.laid === 'courses' ? 'seen by rows' : 'seen by columns';
  const [one, other] = [blockName(first, isHalf), blockName(second, isHalf)];
  if (compareCuts(first, second) === 0) {
    return `${start}: ${one}, ${nextBlock(first)}; ${seen}, ${other}. ${bothCut(first)}`;
  }
  return `${start}: ${one}, ${nextBlock(first)}, **${cutting(first)}**; ${seen}, ${other}, ${cutting(second)}.`;
}

/** `a **half drop** of 4 stitches × 8 rows`, `**bricks** of 8 stitches × 4 rows`, of another step `blocks of …` */
function blockName({ laid, width, height }: Block, isHalf: boolean): string {
  const size = n.size(width, height);
  if (!isHalf) return `**blocks** of ${size}`;
  return laid === 'courses' ? `**bricks** of ${size}` : `a **half drop** of ${size}`;
}

function nextBlock({ laid, step }: Block): string {
  return laid === 'courses'
    ? `each next course ${n.stitches(step)} to the right`
    : `each next column of them ${n.rows(step)} higher`;
}

function cutting({ cuts, corners }: Block): string {
  if (cuts > 0) return `cutting the figure in ${n.count(cuts, 'place')}`;
  return corners > 0 ? 'cutting the figure at corners only' : 'leaving the figure whole';
}

function bothCut({ cuts, corners }: Block): string {
  if (cuts > 0) return `Both cut the figure in ${n.count(cuts, 'place')}.`;
  return corners > 0 ? 'Both cut the figure at corners only.' : 'Both leave the figure whole.';
}

/** A smaller repeat that a few cells break, and where the first of them is; null if there is none. */
function near({ width, height, near: meant, slips }: Measure): string | null {
  if (!meant) return null;
  const every =
    meant.width === width
      ? n.rows(meant.height)
      : meant.height === height
        ? n.stitches(meant.width)
        : n.size(meant.width, meant.height);
  const breaking = slips.filter(({ expected }) => expected !== null);
  const open = openSlips(meant);
  const parts: string[] = [];
  if (breaking[0]) {
    const cells =
      breaking.length === 1 ? '**one cell** breaks that, at' : `**${breaking.length} cells** break that, the first at`;
    parts.push(`${cells} ${place(breaking[0])}`);
  }
  if (open[0]) {
    const places = open.length === 1 ? '**one cell**, at' : `**${open.length} cells**, the first at`;
    parts.push(`copies differ in ${places} ${place(open[0])}, and as many have one yarn there as another`);
  }
  return `It **nearly repeats every ${every}**: ${parts.join('; ')}.`;
}

/** `row 7, stitch 5` */
function place({ column, row }: { readonly column: number; readonly row: number }): string {
  return `row ${row + 1}, stitch ${column + 1}`;
}

/** Rows that hold more than two yarns; null if there are none. */
function manyYarns({ manyYarns: rows }: Measure): string | null {
  if (rows.length === 0) return null;
  const verb = rows.length === 1 ? 'holds' : 'hold';
  return `**${capitalised(n.rowRuns(runsOf(rows)))}** ${verb} more than two yarns.`;
}

export const measure = {
  size,
  repeat,
  copies,
  step,
  near,
  manyYarns,
  blank,
  blankRows,
  /** All of the above that there is to say, in reading order. */
  sentences: (measured: Measure): string[] =>
    [
      size(measured),
      repeat(measured),
      copies(measured),
      step(measured),
      blank(measured),
      blankRows(measured),
      manyYarns(measured),
      near(measured),
    ].filter((sentence) => sentence !== null),
};

/** What the marks mean that stand on the chart just now; empty where there is none to explain. */
function marks(measured: Measure): string {
  const { stitches, rows } = clippedCopies(measured);
  const shown = [
    measured.step ? 'faint lines, two blocks and how the second is stepped' : '',
    stitches + rows > 0 ? 'dash and dot, where the last copy is cut' : '',
    measured.manyYarns.length > 0 ? 'brackets at row numbers, more than two yarns' : '',
    measured.near ? 'broken corners, the near repeat' : '',
    measured.slips.length > 0 ? 'rings, cells where copies differ' : '',
  ].filter((mark) => mark !== '');
  return shown.length === 0 ? '' : `On the chart: ${shown.join('; ')}.`;
}

export const understanding = {
  marks,
  /** What the mark beside the repeat is called, until how it comes about is loaded (words/how.ts). */
  how: 'How it comes about: repeat',
  slips: {
    title: 'Copies that differ',
    which: 'Which is right?',
    none: 'No cell breaks the repeat.',
    choose: 'As many copies have one yarn there as another: choose which is right.',
    /** `2 of 5: row 7, stitch 6 is chalk; in its copies it is slate.` */
    at: (at: number, of: number, column: number, row: number, drawn: string, expected: string): string =>
      `${at} of ${of}: ${place({ column, row })} is ${drawn}; in its copies it is ${expected}.`,
    /** `1 of 2: row 7, stitch 6 is chalk; as many copies have another yarn there. …` */
    atOpen: (at: number, of: number, column: number, row: number, drawn: string): string =>
      `${at} of ${of}: ${place({ column, row })} is ${drawn}; as many copies have another yarn there. Choose which is right.`,
    /** `**3 of 4 copies** have slate there: it is proposed.` */
    asks: (versions: readonly Version[], name: (colour: number) => string): string => {
      const proposed = proposedOf(versions);
      const all = versions.reduce((sum, { copies }) => sum + copies, 0);
      if (proposed)
        return `**${proposed.copies} of ${all} copies** have ${name(proposed.colour)} here: it is proposed.`;
      return all === 2
        ? '**Two copies** differ here. Which is right?'
        : `**${all} copies** differ here, and as many have one yarn as another. Which is right?`;
    },
    /** `Row 7, stitch 5: slate, in 3 copies`; where it is drawn first. */
    version: (column: number, row: number, name: string, copies: number): string =>
      `${capitalised(place({ column, row }))}: ${name}, in ${n.copies(copies)}`,
    /** On the button that chooses a yarn for all copies. */
    isRight: (name: string): string => `${capitalised(name)} is right`,
    settled: (column: number, row: number, name: string): string =>
      `All copies of ${place({ column, row })} are ${name} now.`,
    /** Short, for buttons side by side. */
    buttons: { mend: 'Mend', next: 'Next', before: 'Previous' },
    buttonsLabel: 'Cells that break the repeat',
  },
  measuring: 'Measuring the chart …',
  trims: {
    title: 'Where the repeat starts',
    hint: 'Each of these leaves one repeat, or the figure alone. One step of undo brings the rest back.',
    choices: {
      'crop-blank-first': 'Blank columns first',
      'crop-blank-last': 'Blank columns last',
      'crop-at-cursor': 'At the cursor',
      'trim-blank': 'Trim blank edges',
    },
    /** `row 4, stitch 7` */
    cursor: (column: number, row: number): string => place({ column, row }),
    gives: (width: number, height: number): string => n.size(width, height),
    standing: { 'as-drawn': 'as drawn', 'no-blank': 'no blank columns', empty: 'nothing is drawn' },
  },
};
