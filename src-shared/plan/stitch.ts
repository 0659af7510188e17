/** What there is to know about one stitch: one needle in one row of the plan. */
import type { Run, Side, Slot } from '../bed/index.ts';
import type { SectionName } from '../piece/index.ts';
import { looseStitches, type Float } from '../strands/index.ts';
import { figureRuns } from './figure.ts';
import type { Plan, PlanRow } from './types.ts';

/** Where a stitch stands among the pattern stitches of its row. */
export type StitchPlace = 'edge' | 'first' | 'last' | 'last-before-gap' | 'first-after-gap';

/** A float that starts beside the stitch, or lies across it. */
export interface FloatNear {
  readonly where: Side | 'across';
  readonly role: 'main' | 'contrast';
  readonly stitches: number;
  readonly isOver: boolean;
  /** Hooked or latched up: the most stitches that lie loose of it; null where nothing holds it. */
  readonly loose: number | null;
}

export interface StitchFacts {
  readonly row: number;
  readonly needle: Slot;
  readonly section: SectionName;
  /** Palette index of the yarn it is knitted in. */
  readonly yarn: number;
  readonly role: 'main' | 'contrast';
  /** The carriage's side before the row. */
  readonly from: Side;
  readonly place: StitchPlace | null;
  /** It was added to break a float. */
  readonly isAnchor: boolean;
  /** Longest first. */
  readonly floats: readonly FloatNear[];
}

/** The facts of a needle in a row (1-based), or null beside the piece. */
export function stitchAt(plan: Plan, row: number, needle: Slot): StitchFacts | null {
  const line = plan.rows[row - 1];
  if (!line || needle < line.edges.first || needle > line.edges.last) return null;
  const { fabric } = plan;
  const yarn = fabric.cells[(row - 1) * fabric.width + needle - fabric.first] as number;
  const role = line.contrast.some((run) => needle >= run.first && needle <= run.last) ? 'contrast' : 'main';
  return {
    row,
    needle,
    section: line.section,
    yarn,
    role,
    from: line.from,
    place: placeOf(plan, line, needle, role),
    isAnchor: line.anchors.includes(needle),
    floats: line.floats
      .flatMap((float) => nearness(float, needle, yarn))
      .sort((one, other) => other.stitches - one.stitches),
  };
}

function placeOf(plan: Plan, line: PlanRow, needle: Slot, role: 'main' | 'contrast'): StitchPlace | null {
  if (role === 'contrast' && !line.endNeedles?.needles.includes(needle)) {
    const figure = figureRuns(line);
    const inGroup = patternEnds(plan, line.row, figure, needle);
    const first = figure[0]?.first;
    const last = figure.at(-1)?.last;
    if (needle === inGroup.last) return needle === last ? 'last' : 'last-before-gap';
    if (needle === inGroup.first) return needle === first ? 'first' : 'first-after-gap';
    return null;
  }
  return needle === line.edges.first || needle === line.edges.last ? 'edge' : null;
}

/** First and last pattern stitch, in this row, of the group that `needle` belongs to. */
function patternEnds(plan: Plan, row: number, figure: readonly Run[], needle: Slot): { first: number; last: number } {
  const group = plan.groups.find(
    ({ block, firstRow, lastRow }) =>
      row >= firstRow && row <= lastRow && needle >= block.first && needle <= block.last,
  );
  let first = Infinity;
  let last = -Infinity;
  for (const run of figure) {
    if (group && (run.last < group.block.first || run.first > group.block.last)) continue;
    // A run may go on into the next group where figures touch.
    first = Math.min(first, Math.max(run.first, group?.block.first ?? run.first));
    last = Math.max(last, Math.min(run.last, group?.block.last ?? run.last));
  }
  return { first, last };
}

function nearness(float: Float, needle: Slot, yarn: number): FloatNear[] {
  const { first, last, stitches, isOver, strand } = float;
  const where =
    needle >= first && needle <= last
      ? 'across'
      : strand.yarn !== yarn
        ? null
        : last === needle - 1
          ? 'left'
          : first === needle + 1
            ? 'right'
            : null;
  return where === null
    ? []
    : [{ where, role: strand.role, stitches, isOver, loose: float.held.length > 0 ? looseStitches(float) : null }];
}
