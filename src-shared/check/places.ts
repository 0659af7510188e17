/** Where on the piece a finding is, so that a drawing can show it. */
import type { Run, Side, Slot } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Finding } from './finding.ts';

/** Rows (1-based), and the needles there; null: the rows from edge to edge. */
export interface FindingPlace {
  readonly rows: readonly [first: number, last: number];
  readonly needles: Run | null;
}

/** The places of a finding on the piece of `plan`, from the lowest up; never none. */
export function placesOf(finding: Finding, { outline, groups }: Pick<Plan, 'outline' | 'groups'>): FindingPlace[] {
  const { rows } = finding;
  const onRows = (needles: Run | null): FindingPlace[] => [{ rows, needles }];
  switch (finding.code) {
    case 'long-floats':
    case 'lined-floats':
    case 'long-carry':
    case 'lined-carry':
    case 'floats-unbroken':
      return onRows(finding.needles);
    case 'wider-than-bed':
      return finding.spans.flatMap((span) =>
        (['left', 'right'] as const).flatMap((side): FindingPlace[] => {
          const needles = beyond(outline, span, side, finding.bed);
          return needles ? [{ rows: span, needles }] : [];
        }),
      );
    case 'cut-copies':
    case 'copies-left-out':
    case 'mirrored-lettering':
      return onRows(groups[finding.group]?.block ?? null);
    case 'figure-in-seam':
      return onRows(atEdge(outline, rows, finding.side, finding.stitches));
    case 'odd-shaping':
      return onRows(atEdge(outline, rows, finding.edge, 1));
    case 'shaping-away-from-carriage':
      return onRows(atEdge(outline, rows, finding.edge, Math.abs(finding.stitches)));
    case 'end-needles-seen': {
      const sides = finding.edge === 'both' ? (['left', 'right'] as const) : [finding.edge];
      return sides.flatMap((side) => onRows(atEdge(outline, rows, side, 1)));
    }
    case 'off-fixed-places': {
      const { one, other } = finding;
      return onRows({ first: Math.min(one, other) as Slot, last: Math.max(one, other) as Slot });
    }
    default:
      return onRows(null);
  }
}

/** The needles that a span of rows takes beyond the bed on one side, or null. */
function beyond(outline: Outline, rows: FindingPlace['rows'], side: Side, bed: Run): Run | null {
  const { least, most } = reach(outline, rows);
  if (side === 'left') return least < bed.first ? { first: least, last: (bed.first - 1) as Slot } : null;
  return most > bed.last ? { first: (bed.last + 1) as Slot, last: most } : null;
}

/** So many needles in from an edge, wherever that is on the rows. */
function atEdge(outline: Outline, rows: FindingPlace['rows'], side: Side, stitches: number): Run {
  const { least, most, innermost } = reach(outline, rows);
  return side === 'left'
    ? { first: least, last: (innermost.left + stitches - 1) as Slot }
    : { first: (innermost.right - stitches + 1) as Slot, last: most };
}

/** How far out, and at least how far, both edges go on some rows. */
function reach(
  outline: Outline,
  [first, last]: FindingPlace['rows'],
): { readonly least: Slot; readonly most: Slot; readonly innermost: { readonly left: Slot; readonly right: Slot } } {
  let { first: least, last: most } = edgesAt(outline, first);
  let [left, right] = [least, most];
  for (let row = first + 1; row <= last; row++) {
    const edges = edgesAt(outline, row);
    least = Math.min(least, edges.first) as Slot;
    most = Math.max(most, edges.last) as Slot;
    left = Math.max(left, edges.first) as Slot;
    right = Math.min(right, edges.last) as Slot;
  }
  return { least, most, innermost: { left, right } };
}
