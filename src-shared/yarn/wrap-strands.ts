/** The strands of main to cut for wrapping. */
import type { Side, Slot } from '../bed/index.ts';
import { gaugeAt, wayMm, type FloatLimit, type Gauge, type Gauges } from '../piece/index.ts';
import { longestBetween, type LaidStrands, type StrandId, type Wrap } from '../strands/index.ts';
import { TAIL_MM } from './need.ts';
import type { WrapStrand } from './types.ts';

export interface WrapSettings {
  readonly gauges: Gauges;
  readonly floatLimit: FloatLimit;
  /** Yarn taken by one wrap: that of one stitch. */
  readonly loopMmOf: (gauge: Gauge) => number;
}

/** Wraps on one edge that one strand makes, from the bottom up. */
interface Course {
  readonly edge: Side;
  readonly wraps: { readonly row: number; readonly needle: Slot }[];
}

/**
 * Strands by the row in which they start. One for each edge of a contrast
 * strand's figure; a new one where the edge moves sideways by more than the
 * float limit from wrap to wrap; one folded in two for both edges where the
 * figure is nowhere wider than that limit.
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
  for (const [strand, courses] of coursesByStrand(wraps, longest)) {
    const right = courses.filter(({ edge }) => edge === 'right');
    for (const left of courses.filter(({ edge }) => edge === 'left')) {
      const partner = right.findIndex((course) => areBeside(left, course));
      const isFolded = partner >= 0 && isNarrow(laid, strand, left, right[partner] as Course, longest);
      const both = isFolded ? [left, ...right.splice(partner, 1)] : [left];
      result.push(cut(strand, both, settings));
    }
    for (const course of right) result.push(cut(strand, [course], settings));
  }
  return result.sort((a, b) => a.firstRow - b.firstRow);
}

/** The longest way sideways that a strand may go between two rows, in stitches. */
type Longest = (first: number, last: number) => number;

function coursesByStrand(wraps: readonly (readonly Wrap[] | undefined)[], longest: Longest): Map<StrandId, Course[]> {
  const byStrand = new Map<StrandId, Course[]>();
  wraps.forEach((row, index) => {
    for (const { strand, edge, needle } of row ?? []) {
      const courses = byStrand.get(strand) ?? [];
      byStrand.set(strand, courses);
      const wrap = { row: index + 1, needle };
      const current = courses.findLast((course) => course.edge === edge);
      const before = current?.wraps.at(-1);
      const isNear = before && Math.abs(needle - before.needle) <= longest(before.row, wrap.row);
      if (current && isNear) current.wraps.push(wrap);
      else courses.push({ edge, wraps: [wrap] });
    }
  });
  return byStrand;
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

function cut(strand: StrandId, courses: readonly Course[], { gauges, loopMmOf }: WrapSettings): WrapStrand {
  const [one, other] = courses as [Course, Course?];
  const wraps = courses.reduce((count, course) => count + course.wraps.length, 0);
  let mm = 2 * TAIL_MM;
  for (const course of courses) mm += loopsMm(course.wraps, gauges, loopMmOf) + alongMm(course.wraps, gauges);
  // The fold lies between the lowest wraps of the two edges.
  if (other) mm += alongMm([one.wraps[0], other.wraps[0]] as Course['wraps'], gauges);
  return {
    strand,
    edge: other ? 'both' : one.edge,
    firstRow: Math.min(...courses.map(firstRow)),
    lastRow: Math.max(...courses.map(lastRow)),
    wraps,
    mm,
  };
}

function loopsMm(wraps: Course['wraps'], gauges: Gauges, loopMmOf: WrapSettings['loopMmOf']): number {
  if (gauges.length === 1) return wraps.length * loopMmOf(gaugeAt(gauges, 1));
  return wraps.reduce((mm, { row }) => mm + loopMmOf(gaugeAt(gauges, row)), 0);
}

function alongMm(wraps: Course['wraps'], gauges: Gauges): number {
  let mm = 0;
  wraps.forEach(({ row, needle }, i) => {
    const before = wraps[i - 1];
    if (!before) return;
    const [lower, upper] = [Math.min(row, before.row), Math.max(row, before.row)];
    mm += wayMm(gauges, Math.abs(needle - before.needle), lower, upper);
  });
  return mm;
}
