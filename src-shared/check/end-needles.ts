/** Findings about end-needle selection: what it costs where it is on, and where it is off. */
import { selectsEndNeedles, type EndNeedles, type PlacedAllOver, type PlacedBand } from '../fabric/index.ts';
import { sectionAt } from '../piece/index.ts';
import { longestBetween, type Float } from '../strands/index.ts';
import type { Finding } from './finding.ts';
import { AT_LEFT, AT_RIGHT, type Inspected } from './inspected.ts';

/** `end-needles-always` and `end-needles-none`: a pattern asks for what the machine cannot do. */
export function endNeedlesOfMachine({ piece, laid }: Inspected): Finding[] {
  const can = piece.machine.endNeedles;
  if (can === 'switch') return [];
  return laid
    .filter(({ asked }) => asked.endNeedles !== (can === 'always'))
    .map(({ placed: { kind, firstRow, lastRow } }) => {
      return { code: `end-needles-${can}`, rows: [firstRow, lastRow], isAllOver: kind === 'all-over' };
    });
}

/** `contrast-not-bound-in`: an all-over pattern knitted without end-needle selection, as it asks. */
export function contrastNotBoundIn({ piece, laid }: Inspected): Finding[] {
  if (piece.machine.endNeedles === 'always') return [];
  return laid.flatMap(({ asked, placed: { firstRow, lastRow } }): Finding[] =>
    asked.kind === 'all-over' && !asked.endNeedles
      ? [{ code: 'contrast-not-bound-in', rows: [firstRow, lastRow] }]
      : [],
  );
}

/**
 * `contrast-to-edges`: end-needle selection is on, and the contrast floats too
 * far beside the groups of a band, or from one to the next, or over the plain
 * stitches that an all-over keeps at its edges. Blank rows are another finding.
 */
export function contrastToEdges(all: Inspected): Finding[] {
  const { machine } = all.piece;
  return all.laid.flatMap(({ asked, placed }): Finding[] => {
    if (!selectsEndNeedles(machine, asked)) return [];
    const rows = placed.kind === 'band' ? rowsToEdges(all, placed) : rowsOverBorder(all, placed);
    return rows ? [{ code: 'contrast-to-edges', rows, canBeOff: machine.endNeedles === 'switch' }] : [];
  });
}

/** The first and last row on which the contrast floats too far outside the groups of a band, or null. */
function rowsToEdges({ rows }: Inspected, { groups, firstRow, lastRow }: PlacedBand): Finding['rows'] | null {
  const isInGroup = (float: Float): boolean =>
    groups.some(({ block }) => float.first >= block.first && float.last <= block.last);
  return endsOf(
    rows
      .slice(firstRow - 1, lastRow)
      .filter(
        ({ floats, endNeedles }) =>
          !endNeedles?.isBlank &&
          floats.some((float) => float.isOver && float.strand.role === 'contrast' && !isInGroup(float)),
      ),
  );
}

/** The rows of an all-over, if the contrast floats too far over its border; else null. */
function rowsOverBorder(
  { piece, gauges }: Inspected,
  { border, firstRow, lastRow }: PlacedAllOver,
): Finding['rows'] | null {
  const longest = longestBetween(piece.floatLimit, gauges, firstRow, lastRow);
  return Math.max(border.left, border.right) > longest ? [firstRow, lastRow] : null;
}

function endsOf(rows: readonly { readonly row: number }[]): Finding['rows'] | null {
  const [first, last] = [rows[0]?.row, rows.at(-1)?.row];
  return first === undefined || last === undefined ? null : [first, last];
}

/**
 * `contrast-loose-across`: blank rows of a pattern, in the open, on which the
 * contrast knits the edge needles alone. A row that patterns share is told with
 * the first of them.
 */
export function contrastLooseAcross({ patterns, sections, picked }: Inspected): Finding[] {
  const isLoose = ({ row, endNeedles, floats }: Inspected['rows'][number]): boolean =>
    !sectionAt(sections, row).isLined && floats.some((float) => float.isOver && isFromEdgeToEdge(float, endNeedles));
  const told = new Set<number>();
  return patterns.flatMap(({ firstRow, lastRow }): Finding[] => {
    const loose = picked.withBlankEnds.filter(
      (row) => row.row >= firstRow && row.row <= lastRow && !told.has(row.row) && isLoose(row),
    );
    for (const { row } of loose) told.add(row);
    const ends = endsOf(loose);
    return ends
      ? [{ code: 'contrast-loose-across', rows: ends, count: loose.length, at: loose.map(({ row }) => row) }]
      : [];
  });
}

/** Whether a float of the contrast lies across a blank row, of which it knits the edge needles alone. */
export function isFromEdgeToEdge({ strand }: Pick<Float, 'strand'>, endNeedles: EndNeedles | null): boolean {
  return endNeedles?.isBlank === true && strand.role === 'contrast';
}

/** `end-needles-seen`: an edge whose needles knit contrast beside the figure, and no stitch of which goes into a seam. */
export function endNeedlesSeen({ piece, picked }: Inspected): Finding[] {
  const { left, right } = piece.seamAllowance;
  if (left > 0 && right > 0) return [];
  const seen = (left === 0 ? AT_LEFT : 0) + (right === 0 ? AT_RIGHT : 0);
  let [first, last, count, at] = [0, 0, 0, 0];
  for (let row = 1; row <= picked.endNeedlesAt.length; row++) {
    const edges = (picked.endNeedlesAt[row - 1] as number) & seen;
    if (edges === 0) continue;
    if (count++ === 0) first = row;
    last = row;
    at |= edges;
  }
  if (count === 0) return [];
  const edge = at === AT_LEFT + AT_RIGHT ? 'both' : at === AT_LEFT ? 'left' : 'right';
  const seam = { left: Math.max(1, left), right: Math.max(1, right) };
  return [{ code: 'end-needles-seen', rows: [first, last], edge, count, seam }];
}
