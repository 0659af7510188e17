/**
 * A fill rolled into a tube and looked at stitch by stitch across the seam.
 * Nothing here knows how the program works it out: there are a fabric, a seam,
 * and two edges.
 */
import { OUTSIDE, type SeamMeeting } from '@shared/fabric/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { allOversOf, type AllOver } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { START_MACHINE, START_YARNS, type ProjectAt } from '@shared/project/index.ts';
import { writtenProject } from '../written-projects.ts';
import { rowsOfFill } from './rows-of-fill.ts';

/** The stitches that are seen of a row, left to right on the needles: those that the seam leaves. */
export function seenOf({ fabric }: Plan, row: number, allowance: { left: number; right: number }): number[] {
  const cells = Array.from(fabric.cells.subarray((row - 1) * fabric.width, row * fabric.width));
  const stitches = cells.filter((cell) => cell !== OUTSIDE);
  return stitches.slice(allowance.left, stitches.length - allowance.right);
}

/**
 * A row that repeats after `width` stitches, rolled into a tube: walking on
 * from the right edge, each stitch must look like the one a repeat before it,
 * for as long as a repeat; or each like the one as far on the other side.
 */
function goesOn(seen: readonly number[], width: number, left: readonly number[]): boolean {
  // Walk off the right edge, over the seam, into the left.
  const walked = [...seen, ...left];
  return left.every((stitch, at) => stitch === walked[seen.length + at - width]);
}

/**
 * The stitches that would be seen of `row` on the needles of another row: its
 * repeat knitted on, or knitted less far, on either side.
 */
function seenOnNeedlesOf(
  { fabric, outline }: Plan,
  row: number,
  other: number,
  width: number,
  allowance: { left: number; right: number },
): number[] {
  const first = (outline.first[other - 1] as number) + allowance.left;
  const last = (outline.last[other - 1] as number) - allowance.right;
  const own = (outline.first[row - 1] as number) + allowance.left;
  return Array.from({ length: last - first + 1 }, (_, at) => {
    // From the leftmost needle that is seen of the row on: a stitch of the pattern wherever it is plain beyond that.
    const needle = own + ((((first + at - own) % width) + width) % width);
    return fabric.cells[(row - 1) * fabric.width + (needle - fabric.first)] as number;
  });
}

function isMirror(seen: readonly number[], width: number): boolean {
  return Array.from({ length: width }, (_, at) => seen[at] === seen[seen.length - 1 - at]).every(Boolean);
}

/**
 * By the tube alone: what a row shows at the seam. `beside` are the rows right
 * below and above it that do not go on themselves, on the needles of this one:
 * across the seam they must look on with it. Rows narrower than two repeats are
 * not asked.
 */
function meetingByEye(seen: readonly number[], beside: readonly (readonly number[])[], width: number): SeamMeeting {
  // A row of one yarn shows nothing of a seam, whatever stands beside it.
  if (new Set(seen).size === 1) return { kind: 'continues' };
  const rolled = [seen, ...beside];
  if (rolled.every((row) => goesOn(row, width, row.slice(0, width)))) return { kind: 'continues' };
  if (isMirror(seen, width)) return { kind: 'mirrors' };
  // Take stitches away at the right edge, or knit more of the repeat on, until it goes on.
  for (let by = 1; by <= width; by++) {
    const narrower = rolled.every((row) => goesOn(row.slice(0, row.length - by), width, row.slice(0, width)));
    if (narrower) return { kind: 'off', by };
    const wider = rolled.every((row) => {
      const longer = [...row];
      for (let more = 0; more < by; more++) longer.push(longer[longer.length - width] as number);
      return goesOn(longer, width, row.slice(0, width));
    });
    if (wider) return { kind: 'off', by: -by };
  }
  throw new Error('A repeat more or less always goes on');
}

/** A piece with one motif and one fill of it. */
export function projectOf(grid: Grid, piece: ProjectAt['piece'], fill: AllOver): ProjectAt {
  return writtenProject({
    name: 'tube',
    notes: '',
    machine: START_MACHINE,
    yarnMargin: 10,
    yarns: START_YARNS,
    mainYarn: 0,
    motifs: [{ id: 'm', name: 'm', grid, shows: 'needles', isLettering: false, underlay: null }],
    piece,
    patterns: [fill],
  });
}

/** Rows of a fill and what the tube shows of each, from its first row up. */
export function byEye(project: ProjectAt, plan: Plan): SeamMeeting[] {
  const [fill] = allOversOf(project) as [AllOver];
  const [firstRow] = rowsOfFill(project.piece, fill) as [number, number];
  const { left, right } = project.piece.seamAllowance;
  const width = project.motifs[0]?.grid.width as number;
  return Array.from({ length: plan.outline.rows - firstRow + 1 }, (_, at): SeamMeeting => {
    const plain = Math.max(0, fill.border.left - left) + Math.max(0, fill.border.right - right);
    if (plain > 0) return { kind: 'plain', stitches: plain };
    const row = firstRow + at;
    const beside = [row - 1, row + 1]
      .filter((other) => other >= firstRow && other <= plan.outline.rows)
      .filter((other) => {
        const own = seenOf(plan, other, { left, right });
        return !goesOn(own, width, own.slice(0, width));
      })
      .map((other) => seenOnNeedlesOf(plan, other, row, width, { left, right }));
    return meetingByEye(seenOf(plan, row, { left, right }), beside, width);
  });
}

export const isMet = (meetings: readonly SeamMeeting[]): boolean =>
  meetings.every(({ kind }) => kind === 'continues' || kind === 'plain');
