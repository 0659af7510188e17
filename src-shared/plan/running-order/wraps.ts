/** Wraps beside the figure, each with the strand that makes it. Strands are numbered in the order in which they are taken up. */
import type { StrandId, Wrap } from '../../strands/index.ts';
import type { WrapStrand } from '../../yarn/index.ts';
import type { Work } from './work.ts';

/** Works in the strands that have made their last wrap. */
export function endStrands(work: Work): void {
  work.plan.wrapStrands.forEach(({ lastRow, mm }, index) => {
    work.do(lastRow, { kind: 'strand', strand: index + 1, at: 'end', mm });
  });
}

export function wrapNeedles(work: Work): void {
  const { plan, piece } = work;
  const courses = coursesOf(plan.wrapStrands);
  for (const { row, wraps } of plan.rows) {
    for (const wrap of wraps) {
      const { strand, number, isFirst } = takenUp(courses.get(wrap.strand), wrap, row);
      if (isFirst) work.do(row - 1, { kind: 'strand', strand: number, at: 'start', mm: strand.mm });
      work.do(row - 1, { kind: 'wrap', needle: wrap.needle, edge: wrap.edge, yarn: piece.mainYarn, strand: number });
    }
  }
}

/** A wrapping strand with its number, and whether it has wrapped yet. */
interface Numbered {
  readonly strand: WrapStrand;
  readonly number: number;
  isTaken: boolean;
}

/** What wraps the figure of one contrast strand: those for one edge each, and those folded in two for both; bottom to top. */
type Courses = { readonly [Edge in WrapStrand['edge']]: Course };

interface Course {
  readonly strands: Numbered[];
  /** The one that reaches the row that was asked for last. */
  at: number;
}

function coursesOf(strands: readonly WrapStrand[]): ReadonlyMap<StrandId, Courses> {
  const found = new Map<StrandId, Courses>();
  strands.forEach((strand, index) => {
    let courses = found.get(strand.strand);
    if (!courses) {
      courses = { left: { strands: [], at: 0 }, right: { strands: [], at: 0 }, both: { strands: [], at: 0 } };
      found.set(strand.strand, courses);
    }
    courses[strand.edge].strands.push({ strand, number: index + 1, isTaken: false });
  });
  return found;
}

/** The strand that wraps an edge on a row: one of its own, or one for both. Rows are asked for from the bottom up. */
function takenUp(
  courses: Courses | undefined,
  { edge }: Wrap,
  row: number,
): { readonly strand: WrapStrand; readonly number: number; readonly isFirst: boolean } {
  const one = courses && (reaching(courses[edge], row) ?? reaching(courses.both, row));
  if (!one) throw new RangeError(`No strand wraps the ${edge} on row ${row}`);
  const isFirst = !one.isTaken;
  one.isTaken = true;
  return { strand: one.strand, number: one.number, isFirst };
}

function reaching(course: Course, row: number): Numbered | null {
  const { strands } = course;
  while (course.at < strands.length && (strands[course.at] as Numbered).strand.lastRow < row) course.at++;
  const next = strands[course.at];
  return next && next.strand.firstRow <= row ? next : null;
}
