/** The strands of main to cut for wrapping. */
import { opposite, type Side, type Slot } from '../bed/index.ts';
import { gaugeAt, wayMm, type FloatLimit, type Gauge, type Gauges } from '../piece/index.ts';
import { isCarriedUp, longestBetween, type LaidStrands, type StrandId, type Wrap } from '../strands/index.ts';
import { TAIL_MM } from './need.ts';
import type { WrapStrand } from './types.ts';

export interface WrapSettings {
  readonly gauges: Gauges;
  readonly floatLimit: FloatLimit;
  /** Yarn taken by one wrap: that of one stitch. */
  readonly loopMmOf: (gauge: Gauge) => number;
}

/** No strand is cut longer, or it tangles (common practice, no source). */
export const LONGEST_STRAND_MM = 1500;

/** The carriage comes back to an edge after so many rows. */
const ROWS_TO_AN_EDGE = 2;

interface PlacedWrap {
  readonly row: number;
  readonly needle: Slot;
}

/** Wraps on one edge that one strand can make, from the bottom up; at least one. */
interface Course {
  readonly edge: Side;
  readonly wraps: PlacedWrap[];
}

/** The wraps of one strand. */
type Wrapped = { readonly [Edge in Side]: readonly PlacedWrap[] };

/**
 * Strands by the row in which they start. One for each edge of a contrast
 * strand's figure; a new one where the edge moves sideways by more than the
 * float limit from wrap to wrap, where the next wrap is too far up for a strand
 * to be carried, and where the strand would be longer than
 * {@link LONGEST_STRAND_MM}; one folded in two for both edges where the figure
 * is nowhere wider than the float limit.
 *
 * A strand's length is its wraps, the way between them, and a tail at each end.
 */
export function wrapStrandsOf(
  laid: LaidStrands,
  wraps: readonly (readonly Wrap[] | undefined)[],
  settings: WrapSettings,
): WrapStrand[] {
  const { gauges, floatLimit } = settings;
  const even = gauges.length === 1 ? longestBetween(floatLimit, gauges, 1, 1) : null;
  const longest: Longest = (first, last) => even ?? longestBetween(floatLimit, gauges, first, last);
  const result: WrapStrand[] = [];
  for (const [strand, courses] of coursesByStrand(wraps, longest, gauges)) {
    const right = courses.filter(({ edge }) => edge === 'right');
    for (const left of courses.filter(({ edge }) => edge === 'left')) {
      const partner = right.findIndex((course) => areBeside(left, course));
      const isFolded = partner >= 0 && isNarrow(laid, strand, left, right[partner] as Course, longest);
      const both = isFolded ? [left, ...right.splice(partner, 1)] : [left];
      result.push(...cut(strand, both, settings));
    }
    for (const course of right) result.push(...cut(strand, [course], settings));
  }
  return result.sort((a, b) => a.firstRow - b.firstRow);
}

/** The longest way sideways that a strand may go between two rows, in stitches. */
type Longest = (first: number, last: number) => number;

function coursesByStrand(
  wraps: readonly (readonly Wrap[] | undefined)[],
  longest: Longest,
  gauges: Gauges,
): Map<StrandId, Course[]> {
  const byStrand = new Map<StrandId, Course[]>();
  wraps.forEach((row, index) => {
    for (const { strand, edge, needle } of row ?? []) {
      const courses = byStrand.get(strand) ?? [];
      byStrand.set(strand, courses);
      const wrap = { row: index + 1, needle };
      const current = courses.findLast((course) => course.edge === edge);
      const before = current?.wraps.at(-1);
      const isNear = before && isNext(before, wrap, gauges);
      if (isNear && Math.abs(needle - before.needle) <= longest(before.row, wrap.row)) current?.wraps.push(wrap);
      else courses.push({ edge, wraps: [wrap] });
    }
  });
  return byStrand;
}

/** The carriage has just come back to the edge, or the strand is carried up to the wrap. */
function isNext(before: PlacedWrap, wrap: PlacedWrap, gauges: Gauges): boolean {
  return wrap.row - before.row <= ROWS_TO_AN_EDGE || isCarriedUp(gauges, before.row, wrap.row);
}

function firstRow({ wraps }: Course): number {
  return wraps[0]?.row ?? 0;
}

function lastRow({ wraps }: Course): number {
  return wraps.at(-1)?.row ?? 0;
}

/** The carriage comes to each edge on every other row, so courses of one figure overlap or follow at once. */
function areBeside(a: Course, b: Course): boolean {
  return firstRow(a) <= lastRow(b) + 1 && firstRow(b) <= lastRow(a) + 1;
}

/** True if the figure between two courses is nowhere wider than a strand may go. */
function isNarrow(laid: LaidStrands, strand: StrandId, a: Course, b: Course, longest: Longest): boolean {
  for (let row = Math.min(firstRow(a), firstRow(b)); row <= Math.max(lastRow(a), lastRow(b)); row++) {
    for (const run of laid.rows[row - 1]?.strands ?? []) {
      if (laid.strands[run.strand] === strand && run.last - run.first + 1 > longest(row, row)) return false;
    }
  }
  return true;
}

/** The strands for the wraps of one course, or of two that face each other, each within {@link LONGEST_STRAND_MM}. */
function cut(strand: StrandId, courses: readonly Course[], settings: WrapSettings): WrapStrand[] {
  const inOrder = courses
    .flatMap(({ edge, wraps }) => wraps.map((wrap) => ({ edge, wrap })))
    .sort((a, b) => a.wrap.row - b.wrap.row);
  const strands: WrapStrand[] = [];
  let mm = 2 * TAIL_MM;
  let made: { left: PlacedWrap[]; right: PlacedWrap[] } = { left: [], right: [] };
  for (const { edge, wrap } of inOrder) {
    const more = mmMore(made, edge, wrap, settings);
    const isFirst = made.left.length + made.right.length === 0;
    if (!isFirst && mm + more > LONGEST_STRAND_MM) {
      strands.push(strandOf(strand, made, mm));
      made = { left: [], right: [] };
      mm = 2 * TAIL_MM + mmMore(made, edge, wrap, settings);
    } else mm += more;
    made[edge].push(wrap);
  }
  return [...strands, strandOf(strand, made, mm)];
}

/** What one more wrap adds to a strand: its loop, and the way to it from the wrap before on its edge, or over the fold. */
function mmMore(made: Wrapped, edge: Side, wrap: PlacedWrap, { gauges, loopMmOf }: WrapSettings): number {
  // The fold lies between the lowest wraps of the two edges.
  const before = made[edge].at(-1) ?? made[opposite(edge)][0];
  const loop = loopMmOf(gaugeAt(gauges, wrap.row));
  return before ? loop + wayMm(gauges, Math.abs(wrap.needle - before.needle), before.row, wrap.row) : loop;
}

function strandOf(strand: StrandId, { left, right }: Wrapped, mm: number): WrapStrand {
  const rows = [...left, ...right].map(({ row }) => row);
  return {
    strand,
    edge: left.length === 0 ? 'right' : right.length === 0 ? 'left' : 'both',
    firstRow: Math.min(...rows),
    lastRow: Math.max(...rows),
    wraps: rows.length,
    mm,
  };
}
