/** Which rows of a piece leave the bed, and whether the bed would hold it elsewhere. */
import { widthOf, type Run } from '../bed/index.ts';
import { edgesAt, needlesTaken, type Outline } from './shape.ts';

export interface BeyondBed {
  /** Neighbouring rows that leave the bed, bottom to top. */
  readonly spans: readonly (readonly [first: number, last: number])[];
  /** The widest of these rows; of those as wide, the lowest. */
  readonly row: number;
  readonly edges: Run;
  /** The needles that there are. */
  readonly bed: Run;
}

/** Null where every row stands on the needles of the bed. */
export function beyondBed(outline: Outline, bed: Run): BeyondBed | null {
  const spans: [number, number][] = [];
  let widest: { row: number; edges: Run } | null = null;
  for (let row = 1; row <= outline.rows; row++) {
    const edges = edgesAt(outline, row);
    if (edges.first >= bed.first && edges.last <= bed.last) continue;
    const span = spans.at(-1);
    if (span?.[1] === row - 1) span[1] = row;
    else spans.push([row, row]);
    if (!widest || widthOf(edges) > widthOf(widest.edges)) widest = { row, edges };
  }
  return widest && { spans, ...widest, bed };
}

/**
 * How many needles to the right (negative: to the left) of where it stands, at
 * `offset` from the centre, the piece would be on the bed: in the middle if it
 * fits there, else by the least move. Null if it is too wide to stand anywhere.
 */
export function moveOntoBed(outline: Outline, offset: number, bed: Run): number | null {
  const { first, last } = needlesTaken(outline);
  const [least, most] = [bed.first - first, bed.last - last];
  if (least > most) return null;
  if (-offset >= least && -offset <= most) return -offset;
  return Math.min(most, Math.max(least, 0));
}
