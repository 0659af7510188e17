/**
 * End-needle selection: the needles at the edges of the piece knit contrast on
 * every row of a pattern, so that it is bound in there (common practice, no
 * source). It belongs to the pattern, as far as the machine lets it.
 */
import type { Machine, Run, Slot } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import type { KnitPattern, KnitPiece } from '../project/index.ts';
import type { Rows } from './copies.ts';
import { OUTSIDE, type Fabric, type PlacedPatterns } from './types.ts';

/** Whether end-needle selection is on while a pattern is knitted: as it asks, where the machine leaves the choice. */
export function selectsEndNeedles(machine: Pick<Machine, 'endNeedles'>, pattern: { readonly endNeedles: boolean }) {
  return machine.endNeedles === 'switch' ? pattern.endNeedles : machine.endNeedles === 'always';
}

/** The rows (1-based) on which end-needle selection is on. Where two patterns share a row, the switch has one position: on. */
export function endNeedleRowsOf(
  piece: Pick<KnitPiece, 'machine' | 'patterns'>,
  { patterns }: Pick<PlacedPatterns, 'patterns'>,
): ReadonlySet<number> {
  const rows = new Set<number>();
  patterns.forEach(({ firstRow, lastRow }, index) => {
    if (!selectsEndNeedles(piece.machine, piece.patterns[index] as KnitPattern)) return;
    for (let row = firstRow; row <= lastRow; row++) rows.add(row);
  });
  return rows;
}

/** The edge needles of a row that knit contrast though the pattern has no figure there. */
export interface EndNeedles {
  readonly needles: readonly Slot[];
  /** The row has no figure at all: the contrast lies loose from edge to edge. */
  readonly isBlank: boolean;
}

/** The yarns at the left and at the right edge of a row. */
type Ends = readonly [left: number, right: number];

/**
 * The fabric with contrast on the edge needles of the rows of `on`, and which
 * needles those are (index 0 is row 1).
 *
 * An edge needle takes the contrast that is nearest to it in its row. On a
 * blank row it is the contrast in the second feeder: that of the row before,
 * else of the next, as far as the rows of `on` go on; where a row has two, the
 * one that the next row with figure knits too, so that no yarn is changed
 * between them, else the one on the left; except on rows of `parted`, where the
 * groups have balls of their own and each edge keeps its own. Rows without any
 * contrast near stay.
 *
 * A machine brings forward the outermost needles that were in work on the row
 * before; where they can be seen they are put right by hand after shaping, else
 * the old edge needle knits contrast and the new one does not.
 */
export function withEndNeedles(fabric: Fabric, selecting: Selecting): EndNeedled {
  const knitted = { fabric: { ...fabric, cells: fabric.cells.slice() }, endNeedles: noEndNeedles(fabric) };
  knitEndNeedles(knitted, selecting, [{ first: 1, last: fabric.rows }]);
  return knitted;
}

/** None on any row. */
export function noEndNeedles({ rows }: Pick<Fabric, 'rows'>): (EndNeedles | undefined)[] {
  return new Array<EndNeedles | undefined>(rows);
}

/** What end-needle selection depends on besides the fabric. */
export interface Selecting {
  readonly outline: Outline;
  /** Palette index of the main yarn. */
  readonly main: number;
  /** The rows (1-based) on which it is on. */
  readonly on: ReadonlySet<number>;
  /** The rows on which groups have balls of their own. */
  readonly parted: ReadonlySet<number>;
  readonly chooses: Machine['chooses'];
}

/** A fabric with its end needles (index 0 is row 1). */
export interface EndNeedled {
  readonly fabric: Fabric;
  readonly endNeedles: readonly (EndNeedles | undefined)[];
}

/** The figure alone: the fabric without what only binds the contrast in. */
export function figureOf({ fabric, endNeedles }: EndNeedled, main: number): Fabric {
  const figure = { ...fabric, cells: fabric.cells.slice() };
  for (let row = 1; row <= fabric.rows; row++) takeOff(figure, endNeedles[row - 1], main, row);
  return figure;
}

function takeOff({ cells, width, first }: Fabric, ends: EndNeedles | undefined, main: number, row: number): void {
  for (const needle of ends?.needles ?? []) cells[(row - 1) * width + needle - first] = main;
}

/**
 * Knits the end needles again, in place, after some rows (1-based, ascending)
 * were: these have none yet, all others have theirs. Gives the rows that may not
 * be as they were: a row reaches no further than the next ones with figure below
 * and above it.
 */
export function knitEndNeedlesAgain(
  knitted: EndNeedled & { readonly endNeedles: (EndNeedles | undefined)[] },
  selecting: Selecting,
  rows: readonly number[],
): ReadonlySet<number> {
  const { fabric, endNeedles } = knitted;
  const stretches = rows.map((row) => stretchAround(knitted, selecting, row));
  const reached = new Set<number>();
  for (const { first, last } of stretches) {
    for (let row = first; row <= last; row++) {
      reached.add(row);
      takeOff(fabric, endNeedles[row - 1], selecting.main, row);
      endNeedles[row - 1] = undefined;
    }
  }
  knitEndNeedles(knitted, selecting, stretches);
  return reached;
}

/**
 * The row, and the blank ones below and above it as far as selection is on, each
 * up to the next with figure. A row with figure is asked of no other: one that
 * has no blank rows beside it is alone.
 */
function stretchAround(knitted: EndNeedled, selecting: Selecting, row: number): Rows {
  const { on, main } = selecting;
  let [first, last] = [row, row];
  if (!on.has(row)) return { first, last };
  const isFigure = endsOf(knitted.fabric, row, main) !== null;
  do first--;
  while (isBlank(knitted, selecting, first));
  do last++;
  while (isBlank(knitted, selecting, last));
  const isAlone = { below: isFigure && first === row - 1, above: isFigure && last === row + 1 };
  return {
    first: on.has(first) && !isAlone.below ? first : first + 1,
    last: on.has(last) && !isAlone.above ? last : last - 1,
  };
}

/** Whether selection is on in a row without figure. */
function isBlank({ fabric, endNeedles }: EndNeedled, { on, main }: Selecting, row: number): boolean {
  return on.has(row) && (endNeedles[row - 1]?.isBlank ?? endsOf(fabric, row, main) === null);
}

/**
 * Knits the end needles of stretches of rows, in place, which have none yet.
 * Each begins, and ends, with a row with figure or where selection is switched.
 */
export function knitEndNeedles(
  { fabric, endNeedles }: EndNeedled & { readonly endNeedles: (EndNeedles | undefined)[] },
  { outline, main, on, parted, chooses }: Selecting,
  stretches: readonly Rows[],
): void {
  if (on.size === 0) return;
  const { cells } = fabric;
  /** Blank rows that wait for the contrast of a row above. */
  let waiting: number[] = [];
  let before: Ends | null = null;
  const knit = (row: number, [left, right]: Ends, isBlank: boolean): void => {
    const { first, last } = outermostOn(outline, row, chooses);
    const at = (row - 1) * fabric.width - fabric.first;
    const now = edgesAt(outline, row);
    const needles = (first === last ? [first] : [first, last]).filter(
      (needle) => cells[at + needle] === main && needle >= now.first && needle <= now.last,
    );
    if (needles.length === 0) return;
    for (const needle of needles) cells[at + needle] = needle === first ? left : right;
    endNeedles[row - 1] = { needles, isBlank };
  };
  const knitBlank = (row: number, [left, right]: Ends): void => knit(row, [left, parted.has(row) ? right : left], true);
  /** Of two contrasts of the row below blank ones the one that stays in the feeder; asked once for the blank rows between two with figure. */
  let stays: { readonly of: Ends; readonly ends: Ends } | null = null;
  const stayingOf = (ends: Ends, row: number): Ends => {
    const [left, right] = ends;
    if (stays?.of === ends) return stays.ends;
    let next = row;
    while (left !== right && on.has(next) && endsOf(fabric, next, main) === null) next++;
    const staying =
      left !== right && on.has(next) && !knits(fabric, next, left) && knits(fabric, next, right) ? right : left;
    stays = { of: ends, ends: [staying, staying] };
    return stays.ends;
  };
  for (const { first, last } of stretches) {
    [before, waiting] = [null, []];
    for (let row = first; row <= last; row++) {
      if (!on.has(row)) {
        [before, waiting] = [null, []];
        continue;
      }
      const ends = endsOf(fabric, row, main);
      if (ends) {
        for (const blank of waiting) knitBlank(blank, ends);
        waiting = [];
        before = ends;
        knit(row, ends, false);
      } else if (before) knitBlank(row, parted.has(row) ? before : stayingOf(before, row));
      else waiting.push(row);
    }
  }
}

/**
 * The needles that end-needle selection chooses for a row: the outermost of the
 * row before, or of the row itself where they are put right by hand.
 */
export function outermostOn(outline: Outline, row: number, chooses: Machine['chooses']): Run {
  return edgesAt(outline, chooses === 'ahead-unseen' && row > 1 ? row - 1 : row);
}

/**
 * On a machine whose forward needles cannot be seen, a needle that comes into
 * work before a row (1-based) was not there to be chosen: makes it knit main.
 */
export function knitUnseen({ cells, width, first }: Fabric, outline: Outline, main: number, row: number): void {
  if (row === 1) return;
  const [before, now] = [edgesAt(outline, row - 1), edgesAt(outline, row)];
  const start = (row - 1) * width - first;
  if (now.first < before.first) cells.fill(main, start + now.first, start + Math.min(before.first, now.last + 1));
  if (now.last > before.last) cells.fill(main, start + Math.max(before.last + 1, now.first), start + now.last + 1);
}

function knits({ cells, width, rows }: Fabric, row: number, yarn: number): boolean {
  return row <= rows && cells.subarray((row - 1) * width, row * width).includes(yarn);
}

/** The outermost contrasts of a row, or null where it is all main. */
function endsOf({ cells, width }: Fabric, row: number, main: number): Ends | null {
  const start = (row - 1) * width;
  let left = start;
  while (left < start + width && (cells[left] === main || cells[left] === OUTSIDE)) left++;
  if (left === start + width) return null;
  let right = start + width - 1;
  while (cells[right] === main || cells[right] === OUTSIDE) right--;
  return [cells[left] as number, cells[right] as number];
}
