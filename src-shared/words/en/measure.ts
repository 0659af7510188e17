/**
 * What a drawing is, in sentences. Strong numbers are marked; see ../marked.ts.
 */
import type { Blank, Measure } from '../../repeat/index.ts';
import { numbers as n } from './numbers.ts';

/** `The chart is **48 stitches × 48 rows**.` */
function size({ width, height }: Measure): string {
  return `The chart is **${n.size(width, height)}**.`;
}

function repeat({ width, height, repeat: unit }: Measure): string {
  const said = `The repeat is **${n.size(unit.width, unit.height)}**`;
  return unit.width === width && unit.height === height ? `${said}, all that is drawn.` : `${said}.`;
}

/** How many whole copies are drawn, and where the last one is cut; null if the drawing is one copy. */
function copies({ width, height, repeat: unit }: Measure): string | null {
  if (unit.width === width && unit.height === height) return null;
  const across = Math.floor(width / unit.width);
  const up = Math.floor(height / unit.height);
  const cuts = [
    unit.dividesAcross ? '' : `${n.columns(width - across * unit.width)} of one more at the right`,
    unit.dividesUp ? '' : `${n.rows(height - up * unit.height)} of one more at the top`,
  ].filter((cut) => cut !== '');
  const whole = `It is drawn **${across} × ${up}** times`;
  return cuts.length === 0 ? `${whole}.` : `${whole}, and ${n.list(cuts)}: **the last copy is cut**.`;
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
  const said = `The **${columns} blank** all the way up`;
  if (!unit.dividesAcross) return `${said}.`;
  return `${said}: each figure shows as **${n.stitches(unit.width - apart)}**, copies stand **${apart} apart**.`;
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

/** How far the pattern moves sideways from one band of copies to the next; null if it does not. */
function step({ step: move }: Measure): string | null {
  if (!move) return null;
  return `The copies are stepped: **${n.rows(move.rows)}** up, the pattern stands **${n.stitches(move.shift)}** to the right.`;
}

/** A smaller repeat that a few cells break, and where the first of them is; null if there is none. */
function near({ near: meant, slips }: Measure): string | null {
  const [first] = slips;
  if (!meant || !first) return null;
  const breaking = slips.length === 1 ? '**One cell** breaks' : `**${slips.length} cells** break`;
  const where = `column ${first.column + 1}, row ${first.row + 1}`;
  return `${breaking} a repeat of **${n.size(meant.width, meant.height)}**${slips.length === 1 ? ':' : ', the first at'} ${where}.`;
}

export const measure = {
  size,
  repeat,
  copies,
  step,
  near,
  blank,
  blankRows,
  /** All of the above that there is to say, in reading order. */
  sentences: (measured: Measure): string[] =>
    [
      size(measured),
      repeat(measured),
      copies(measured),
      step(measured),
      near(measured),
      blank(measured),
      blankRows(measured),
    ].filter((sentence) => sentence !== null),
};
