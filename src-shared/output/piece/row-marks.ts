/** The rows of a piece at which something changes, and how many of them can be numbered one below the other. */
import { bandsOf } from '../../pattern/index.ts';
import type { Outline } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';

/** A number beside the drawing: of one row, or of rows that come again at even distances. */
export interface RowMark {
  /** From the lowest; more than two are as far apart as the first two. */
  readonly rows: readonly number[];
  /** A pattern begins or ends there. */
  readonly isPattern: boolean;
}

/** Rows in steps, fewer than this, are numbered one by one even where there is no room. */
const LEAST_STEPS = 3;

/** Each row that is the first of another width or of a section, or the first or last of a pattern, of the piece. */
function rowChanges({ outline, sections, patterns }: Plan): { pattern: number[]; other: number[] } {
  const pattern = new Set(patterns.flatMap(({ firstRow, lastRow }) => [firstRow, lastRow]));
  const other = new Set([1, outline.rows, ...sections.map(({ first }) => first), ...widthChanges(outline)]);
  const inOrder = (rows: Iterable<number>): number[] => [...rows].sort((a, b) => a - b);
  return { pattern: inOrder(pattern), other: inOrder([...other].filter((row) => !pattern.has(row))) };
}

/** The rows that groups stand on, whose margins are told; from the lowest up. */
export function rowsMeasured(plan: Pick<Plan, 'patterns'>): number[] {
  const rows = bandsOf(plan).map(({ firstRow }) => firstRow);
  return rows.sort((a, b) => a - b);
}

/** The rows (1-based) whose needles are not those of the row below. */
export function widthChanges({ rows, first, last }: Outline): number[] {
  return Array.from({ length: rows - 1 }, (_, index) => index + 2).filter(
    (row) => first[row - 1] !== first[row - 2] || last[row - 1] !== last[row - 2],
  );
}

/**
 * The marks of all changes where there is room for `most` of them; else steps of
 * one shaping as one mark each, which names its first and last row and how far
 * apart they are; else each pattern as one mark too.
 */
export function rowMarks(plan: Plan, most: number): RowMark[] {
  const { pattern, other } = rowChanges(plan);
  const one = (row: number, isPattern: boolean): RowMark => ({ rows: [row], isPattern });
  const each = [...pattern.map((row) => one(row, true)), ...other.map((row) => one(row, false))];
  if (each.length <= most) return each;
  const stepped = steps(other).map((rows): RowMark => ({ rows, isPattern: false }));
  const told = [...pattern.map((row) => one(row, true)), ...stepped];
  if (told.length <= most) return told;
  const spans = plan.patterns.map(({ firstRow, lastRow }): RowMark => {
    return { rows: firstRow === lastRow ? [firstRow] : [firstRow, lastRow], isPattern: true };
  });
  const unlike = new Map(spans.map((span) => [span.rows.join(), span]));
  return [...unlike.values(), ...stepped].slice(0, most);
}

/** Rows taken together where they come at even distances. */
function steps(rows: readonly number[]): number[][] {
  const found: number[][] = [];
  let from = 0;
  while (from < rows.length) {
    let to = from + 1;
    const step = (rows[to] ?? 0) - (rows[from] as number);
    while (to + 1 < rows.length && (rows[to + 1] as number) - (rows[to] as number) === step) to++;
    if (to - from + 1 >= LEAST_STEPS && to < rows.length) {
      found.push(rows.slice(from, to + 1));
      from = to + 1;
    } else {
      found.push([rows[from] as number]);
      from++;
    }
  }
  return found;
}

/** Labels of some heights set one below the other, each as near as can be to the place it wants, between `top` and `bottom`. */
export function stacked(
  wanted: readonly { readonly at: number; readonly height: number }[],
  top: number,
  bottom: number,
): number[] {
  // Groups that touch move together, to where their members want them on average.
  const groups: { start: number; height: number; sum: number; count: number }[] = [];
  const place = (group: (typeof groups)[number]): void => {
    const start = group.sum / group.count;
    group.start = Math.max(top, Math.min(start, bottom - group.height));
  };
  for (const { at, height } of wanted) {
    const fresh = { start: 0, height, sum: at - height / 2, count: 1 };
    place(fresh);
    groups.push(fresh);
    for (let last = groups.length - 1; last > 0; last--) {
      const [above, below] = [groups[last - 1], groups[last]] as [typeof fresh, typeof fresh];
      if (above.start + above.height <= below.start + 1e-9) break;
      above.sum += below.sum - below.count * above.height;
      above.count += below.count;
      above.height += below.height;
      place(above);
      groups.pop();
    }
  }
  const middles: number[] = [];
  for (const { start, count } of groups) {
    let end = start;
    for (const { height } of wanted.slice(middles.length, middles.length + count)) {
      middles.push(end + height / 2);
      end += height;
    }
  }
  return middles;
}
