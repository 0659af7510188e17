/**
 * How far a group can go: needle by needle and row by row, until something is
 * in its way. Groups of a band keep their rows to each other, so going up or down
 * takes the whole band along.
 */
import type { Slot } from '@shared/bed/index.ts';
import type { PlacedGroup, Plan } from '@shared/knitting/index.ts';
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import type { Band, Change, Project } from '@shared/project/index.ts';
import { byHandIn } from './keep.ts';

/** Where the groups of a band stand: their first needles, left to right, and their first row (from 1). */
export interface Standing {
  readonly first: readonly Slot[];
  readonly firstRow: number;
}

/** What does not move while groups of one band do. */
export interface Ground {
  readonly outline: Outline;
  /** The groups of the band, in needles and rows, and how many rows above the band's first row each starts. */
  readonly groups: readonly { readonly width: number; readonly height: number; readonly rise: number }[];
  /** The groups of all other bands. */
  readonly others: readonly PlacedGroup[];
}

/** What is in the way: an edge of the piece, its first or last row, a group of the band, another band. */
export type Stop = 'edge' | 'end' | 'group' | 'band';

export function groundOf(plan: Plan, band: number): Ground {
  return {
    outline: plan.outline,
    groups: plan.groups.filter((group) => group.band === band).map((group) => sizeOf(group, firstRowOf(plan, band))),
    others: plan.groups.filter((group) => group.band !== band),
  };
}

export function standingOf(plan: Plan, band: number): Standing {
  const groups = plan.groups.filter((group) => group.band === band);
  return { first: groups.map(({ block }) => block.first), firstRow: firstRowOf(plan, band) };
}

function firstRowOf(plan: Plan, band: number): number {
  return plan.bands[band]?.firstRow ?? 1;
}

/** What keeps the groups from standing so, or null if they can. */
export function whatStops({ outline, groups, others }: Ground, { first, firstRow }: Standing): Stop | null {
  const lastRow = firstRow + Math.max(...groups.map(({ height, rise }) => rise + height)) - 1;
  if (firstRow < 1 || lastRow > outline.rows) return 'end';
  const edges = edgesAt(outline, firstRow);
  let end: number = edges.first;
  for (const [index, { width, height, rise }] of groups.entries()) {
    const start = first[index] as number;
    const last = start + width - 1;
    if (start < edges.first || last > edges.last) return 'edge';
    if (start < end) return 'group';
    end = last + 1;
    const isOverlapping = ({ block, firstRow: from, lastRow: to }: PlacedGroup): boolean =>
      from < firstRow + rise + height && firstRow + rise <= to && block.first <= last && start <= block.last;
    if (others.some(isOverlapping)) return 'band';
  }
  return null;
}

/**
 * Takes one group towards a first needle and the band towards a first row,
 * sliding along what is in the way. `stop` says what kept it from arriving.
 */
export function walk(
  ground: Ground,
  from: Standing,
  group: number,
  to: { readonly first: number; readonly firstRow: number },
): { readonly standing: Standing; readonly stop: Stop | null } {
  let standing = from;
  for (;;) {
    const ways = [upOrDown(standing, to.firstRow), sideways(standing, group, to.first)].filter((way) => way !== null);
    const [nearest] = ways;
    if (!nearest) return { standing, stop: null };
    const free = ways.find((way) => whatStops(ground, way) === null);
    if (!free) return { standing, stop: whatStops(ground, nearest) };
    standing = free;
  }
}

/** The change that puts the groups of a band there: by hand, and from that row on if it is another one. */
export function changeTo(project: Project, band: number, { first, firstRow }: Standing, before: Standing): Change {
  const rule = byHandIn(project.bands[band] as Band, first);
  const to = { rule, choice: 0 };
  const position = { kind: 'from-row', row: firstRow } as const;
  return { kind: 'band', name: 'move-group', band, to: firstRow === before.firstRow ? to : { ...to, position } };
}

export function isSameStanding(one: Standing, other: Standing): boolean {
  return one.firstRow === other.firstRow && one.first.every((needle, index) => needle === other.first[index]);
}

function upOrDown(standing: Standing, firstRow: number): Standing | null {
  const step = Math.sign(firstRow - standing.firstRow);
  return step === 0 ? null : { ...standing, firstRow: standing.firstRow + step };
}

function sideways(standing: Standing, group: number, first: number): Standing | null {
  const step = Math.sign(first - (standing.first[group] as number));
  if (step === 0) return null;
  return { ...standing, first: standing.first.map((at, index) => (index === group ? ((at + step) as Slot) : at)) };
}

function sizeOf({ block, firstRow, lastRow }: PlacedGroup, bandRow: number): Ground['groups'][number] {
  return { width: block.last - block.first + 1, height: lastRow - firstRow + 1, rise: firstRow - bandRow };
}
