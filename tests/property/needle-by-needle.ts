/** A plan looked at needle by needle: what the charts and end-needle selection say of each, and which strand knits it. */
import { OUTSIDE } from '@shared/fabric/index.ts';
import type { Gauge, Piece } from '@shared/piece/index.ts';
import type { Plan, PlanRow } from '@shared/plan/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { motifOf, type ProjectAt } from '@shared/project/index.ts';
import { edgesOn, isPartedOn, isSelectingOn } from './edge-needles.ts';

/** The gauge of a row, counted through what the piece says about its sections. */
export function gaugeOfRow({ hemRows, hem, sections: parts, gauge }: Piece, row: number): Gauge {
  let below = hemRows;
  if (row <= below) return hem.gauge ?? gauge;
  for (const part of parts) {
    below += part.rows;
    if (row <= below) return part.gauge ?? gauge;
  }
  return gauge;
}

export function cellAt({ fabric }: Plan, row: number, needle: number): number {
  const column = needle - fabric.first;
  if (column < 0 || column >= fabric.width) return OUTSIDE;
  return fabric.cells[(row - 1) * fabric.width + column] as number;
}

export function needlesOf({ edges }: PlanRow): number[] {
  return Array.from({ length: edges.last - edges.first + 1 }, (_, i) => edges.first + i);
}

/** What the charts say of a needle. */
function drawnAt(plan: Plan, project: ProjectAt, row: number, needle: number): number {
  const index = groupAt(plan, row, needle);
  if (index === null) return project.mainYarn;
  const group = plan.groups[index] as Plan['groups'][number];
  const { grid, shows } = motifOf(project, group.motif);
  const offset = (needle - group.block.first) % group.copy.width;
  const isMirrored = bandsOf(project).flatMap(({ groups }) => groups)[index]?.isMirrored;
  // The purl side faces the knitter: the knit side as worn is seen from behind; a mirrored group once more.
  const isTurned = (shows === 'worn' && project.piece.finishedFace === 'knit') !== isMirrored;
  const column = isTurned ? group.copy.width - 1 - offset : offset;
  return grid.cells[((row - group.firstRow) % grid.height) * grid.width + column] as number;
}

/** The group whose block covers a needle on a row, or null. */
export function groupAt({ groups }: Plan, row: number, needle: number): number | null {
  const index = groups.findIndex(
    ({ block, firstRow, lastRow }) =>
      needle >= block.first && needle <= block.last && row >= firstRow && row <= lastRow,
  );
  return index < 0 ? null : index;
}

/** What the needles of all rows knit by the charts and by end-needle selection, from the first needle of each row. */
export function designOf(plan: Plan, project: ProjectAt): (row: number) => readonly (number | null)[] {
  const lines = plan.rows.map((row) => needlesOf(row).map((needle) => drawnAt(plan, project, row.row, needle)));
  const isOn = (row: number): boolean => isSelectingOn(project, plan, row);
  const isParted = (row: number): boolean => isPartedOn(project, plan.groups, row);
  return (row) => edgesOn(lines, row, project.mainYarn, isOn, isParted);
}

/** The group whose ball an edge needle outside all groups is knitted from: the one nearest to it. */
function outermostBeside({ groups }: Plan, row: number, needle: number): number | null {
  const beside = groups
    .map(({ block, firstRow, lastRow }, index) => ({ block, index, isOn: row >= firstRow && row <= lastRow }))
    .filter(({ isOn }) => isOn);
  const isLeft = beside.every(({ block }) => needle < block.first);
  const isRight = beside.every(({ block }) => needle > block.last);
  const [nearest] = beside.sort((a, b) => (isLeft ? a.block.first - b.block.first : b.block.last - a.block.last));
  return isLeft || isRight ? (nearest?.index ?? null) : null;
}

/** The strand that knits a needle, as text: yarn, and the group with a ball of its own. */
function strandAt(plan: Plan, project: ProjectAt, row: number, needle: number): string {
  const yarn = cellAt(plan, row, needle);
  if (yarn === project.mainYarn) return 'main';
  const group = groupAt(plan, row, needle) ?? outermostBeside(plan, row, needle);
  const hasOwnBall = group !== null && bandsOf(project).flatMap(({ groups }) => groups)[group]?.hasOwnBall === true;
  return `${yarn} of ${hasOwnBall ? group : 'all'}`;
}

export function nameOf({ role, yarn, group }: PlanRow['floats'][number]['strand']): string {
  return role === 'main' ? 'main' : `${yarn} of ${group ?? 'all'}`;
}

/** By strand that knits in a row: its needles, left to right. Main is none of them on a row all in contrast. */
export function needlesByStrand(plan: Plan, project: ProjectAt, row: PlanRow): Map<string, number[]> {
  const strands = new Map<string, number[]>();
  for (const needle of needlesOf(row)) {
    const strand = strandAt(plan, project, row.row, needle);
    strands.set(strand, [...(strands.get(strand) ?? []), needle]);
  }
  return strands;
}

/** First and last needle of a strand's span. */
export function spanOf(strand: string, needles: readonly number[], row: PlanRow): [number, number] {
  if (strand === 'main') return [row.edges.first, row.edges.last];
  return [needles[0] as number, needles.at(-1) as number];
}
