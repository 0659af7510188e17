/** The floats of a row that are over a limit, found where few of its cells need be looked at. */
import type { Run } from '../bed/index.ts';
import type { OwnBall } from '../strands/index.ts';
import type { Cells } from './cells.ts';

export interface LongFloat {
  readonly first: number;
  readonly last: number;
  readonly yarn: number;
  /** The group whose own ball it is of, or null. */
  readonly ball: number | null;
}

/**
 * The floats of contrast in a row (1-based) over more than `longest` needles,
 * from the left. Where all contrast is of one yarn and one ball, a float lies
 * behind main alone, and every needle but each `longest` and first is skipped.
 */
export function longFloats(
  cells: Cells,
  row: number,
  edges: Run,
  longest: number,
  balls: readonly OwnBall[],
  isOfTwoYarns: boolean,
): LongFloat[] {
  if (isOfTwoYarns && balls.length === 0) return behindMain(cells, row, edges, longest);
  const found: LongFloat[] = [];
  /** The needle that each strand knitted last. */
  const lastAt = new Map<number, number>();
  for (let needle: number = edges.first; needle <= edges.last; needle++) {
    const yarn = cells.cells[cells.index(row, needle)] as number;
    if (yarn === cells.main) continue;
    const ball = balls.find(({ first, last }) => needle >= first && needle <= last)?.group ?? null;
    const strand = (ball === null ? 0 : ball + 1) * 256 + yarn;
    const before = lastAt.get(strand);
    if (before !== undefined && needle - before - 1 > longest)
      found.push({ first: before + 1, last: needle - 1, yarn, ball });
    lastAt.set(strand, needle);
  }
  return found;
}

/** The floats of main behind more than `longest` needles; none on a row all in contrast, on which main waits. */
export function longFloatsOfMain(cells: Cells, row: number, edges: Run, longest: number): LongFloat[] {
  const found = stretches(cells, row, edges, longest, (yarn) => yarn !== cells.main);
  return found
    .filter(({ first, last }) => first > edges.first || last < edges.last)
    .map((stretch) => ({ ...stretch, yarn: cells.main, ball: null }));
}

function behindMain(cells: Cells, row: number, edges: Run, longest: number): LongFloat[] {
  const found = stretches(cells, row, edges, longest, (yarn) => yarn === cells.main);
  return found
    .filter(({ first, last }) => first > edges.first && last < edges.last)
    .map(({ first, last }) => ({ first, last, yarn: cells.cells[cells.index(row, last + 1)] as number, ball: null }));
}

/** Runs of more than `longest` needles that are `isIn`: each has one that is so many from an edge. */
function stretches(
  cells: Cells,
  row: number,
  edges: Run,
  longest: number,
  isIn: (yarn: number) => boolean,
): { readonly first: number; readonly last: number }[] {
  const found: { first: number; last: number }[] = [];
  const start = cells.index(row, 0);
  const has = (needle: number): boolean => isIn(cells.cells[start + needle] as number);
  let needle = edges.first + longest;
  while (needle <= edges.last) {
    if (!has(needle)) {
      needle += longest + 1;
      continue;
    }
    let [first, last] = [needle, needle];
    while (first > edges.first && has(first - 1)) first--;
    while (last < edges.last && has(last + 1)) last++;
    if (last - first >= longest) found.push({ first, last });
    needle = last + longest + 2;
  }
  return found;
}
