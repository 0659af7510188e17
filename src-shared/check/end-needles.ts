/** Findings about end-needle selection: what it costs where it is on, and where it is off. */
import type { Run, Slot } from '../bed/index.ts';
import { selectsEndNeedles, type EndNeedles } from '../fabric/index.ts';
import { sectionAt } from '../piece/index.ts';
import { longestBetween, type Float } from '../strands/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** A band or a fill: what it asks for, and the rows it is on. */
interface Pattern {
  readonly asksFor: boolean;
  readonly isAllOver: boolean;
  readonly firstRow: number;
  readonly lastRow: number;
}

function patternsOf({ piece, bands, fills }: Inspected): Pattern[] {
  return [
    ...bands.map(({ firstRow, lastRow }, band) => ({
      asksFor: piece.bands[band]?.endNeedles ?? false,
      isAllOver: false,
      firstRow,
      lastRow,
    })),
    ...fills.map(({ fill, firstRow, lastRow }) => ({
      asksFor: piece.fills[fill]?.endNeedles ?? false,
      isAllOver: true,
      firstRow,
      lastRow,
    })),
  ];
}

/** `end-needles-always` and `end-needles-none`: a pattern asks for what the machine cannot do. */
export function endNeedlesOfMachine(all: Inspected): Finding[] {
  const can = all.piece.machine.endNeedles;
  if (can === 'switch') return [];
  return patternsOf(all)
    .filter(({ asksFor }) => asksFor !== (can === 'always'))
    .map(({ isAllOver, firstRow, lastRow }) => ({ code: `end-needles-${can}`, rows: [firstRow, lastRow], isAllOver }));
}

/** `contrast-not-bound-in`: an all-over pattern knitted without end-needle selection, as it asks. */
export function contrastNotBoundIn(all: Inspected): Finding[] {
  if (all.piece.machine.endNeedles === 'always') return [];
  return patternsOf(all).flatMap(({ asksFor, isAllOver, firstRow, lastRow }): Finding[] =>
    isAllOver && !asksFor ? [{ code: 'contrast-not-bound-in', rows: [firstRow, lastRow] }] : [],
  );
}

/**
 * `contrast-to-edges`: end-needle selection is on, and the contrast floats too
 * far beside the groups of a band, or from one to the next, or over the plain
 * stitches that a fill keeps at its edges. Blank rows are another finding.
 */
export function contrastToEdges({ piece, bands, fills, groups, rows, gauges }: Inspected): Finding[] {
  const { machine } = piece;
  const canBeOff = machine.endNeedles === 'switch';
  const besideGroups = bands.flatMap(({ firstRow, lastRow }, band): Finding[] => {
    const pattern = piece.bands[band];
    if (!pattern || !selectsEndNeedles(machine, pattern)) return [];
    const blocks = groups.filter((group) => group.band === band).map(({ block }) => block);
    const isInGroup = (float: Float): boolean =>
      blocks.some((block) => float.first >= block.first && float.last <= block.last);
    const found = rows
      .slice(firstRow - 1, lastRow)
      .filter(
        ({ floats, endNeedles }) =>
          !endNeedles?.isBlank &&
          floats.some((float) => float.isOver && float.strand.role === 'contrast' && !isInGroup(float)),
      );
    const [first, last] = [found[0]?.row, found.at(-1)?.row];
    return first === undefined || last === undefined
      ? []
      : [{ code: 'contrast-to-edges', rows: [first, last], canBeOff }];
  });
  const besideFills = fills.flatMap(({ fill, border, firstRow, lastRow }): Finding[] => {
    const pattern = piece.fills[fill];
    if (!pattern || !selectsEndNeedles(machine, pattern)) return [];
    const longest = longestBetween(piece.floatLimit, gauges, firstRow, lastRow);
    return Math.max(border.left, border.right) > longest
      ? [{ code: 'contrast-to-edges', rows: [firstRow, lastRow], canBeOff }]
      : [];
  });
  return [...besideGroups, ...besideFills];
}

/**
 * `contrast-loose-across`: blank rows of a pattern, in the open, on which the
 * contrast knits the edge needles alone. A row that patterns share is told with
 * the first of them.
 */
export function contrastLooseAcross(all: Inspected): Finding[] {
  const isLoose = ({ row, endNeedles, floats }: Inspected['rows'][number]): boolean =>
    !sectionAt(all.sections, row).isLined &&
    floats.some((float) => float.isOver && isFromEdgeToEdge(float, endNeedles));
  const told = new Set<number>();
  return patternsOf(all).flatMap(({ firstRow, lastRow }): Finding[] => {
    const loose = all.rows.slice(firstRow - 1, lastRow).filter((row) => !told.has(row.row) && isLoose(row));
    for (const { row } of loose) told.add(row);
    const [first, last] = [loose[0]?.row, loose.at(-1)?.row];
    return first === undefined || last === undefined
      ? []
      : [{ code: 'contrast-loose-across', rows: [first, last], count: loose.length }];
  });
}

/** Whether a float of the contrast lies across a blank row, of which it knits the edge needles alone. */
export function isFromEdgeToEdge({ strand }: Pick<Float, 'strand'>, endNeedles: EndNeedles | null): boolean {
  return endNeedles?.isBlank === true && strand.role === 'contrast';
}

/** `end-needles-seen`: an edge whose needles knit contrast beside the figure, and no stitch of which goes into a seam. */
export function endNeedlesSeen({ piece, rows }: Inspected): Finding[] {
  const { left, right } = piece.seamAllowance;
  const isSeen = (end: Slot, edges: Run): boolean =>
    (left === 0 && end === edges.first) || (right === 0 && end === edges.last);
  const seen = rows.filter(({ endNeedles, edges }) => endNeedles?.needles.some((end) => isSeen(end, edges)));
  const [first, last] = [seen[0]?.row, seen.at(-1)?.row];
  if (first === undefined || last === undefined) return [];
  const at = (side: 'first' | 'last'): boolean =>
    seen.some(({ endNeedles, edges }) => endNeedles?.needles.includes(edges[side]));
  const [atLeft, atRight] = [left === 0 && at('first'), right === 0 && at('last')];
  const edge = atLeft && atRight ? 'both' : atLeft ? 'left' : 'right';
  return [{ code: 'end-needles-seen', rows: [first, last], edge, count: seen.length }];
}
