/**
 * How far a group can go: needle by needle and row by row, until something is
 * in its way. Groups of a band keep their rows to each other, so going up or down
 * takes the whole band along, unless one of them is raised or lowered alone.
 */
import type { Slot } from '@shared/bed/index.ts';
import { NO_BORDER, rowsMet, type PlacedGroup, type PlacedPattern } from '@shared/fabric/index.ts';
import { edgesAt, movedTo, type Outline, type SectionSpan } from '@shared/piece/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { bandsOf, copiesOf, type Band, type PatternKind } from '@shared/pattern/index.ts';
import { changeOf, setPattern, type Change, type ProjectAt } from '@shared/project/index.ts';
import { byHandIn } from './keep.ts';

/** Where the groups of a band stand: their first needles, left to right, the band's first row (from 1), and the rows that each starts above it. */
export interface Standing {
  readonly first: readonly Slot[];
  readonly firstRow: number;
  readonly rises: readonly number[];
}

/** What does not move while groups of one band do. */
export interface Ground {
  readonly outline: Outline;
  readonly sections: readonly SectionSpan[];
  /** The groups of the band, in needles and rows. */
  readonly groups: readonly { readonly width: number; readonly height: number }[];
  /** All patterns but the band. */
  readonly others: readonly PlacedPattern[];
}

/** What is in the way: an edge of the piece, its first or last row, a group of the band, another pattern. */
export type Stop = 'edge' | 'end' | 'group' | PatternKind;

export function groundOf(plan: Plan, band: number): Ground {
  const moved = bandsOf(plan)[band];
  return {
    outline: plan.outline,
    sections: plan.sections,
    groups: moved?.groups.map(sizeOf) ?? [],
    others: plan.patterns.filter((pattern) => pattern !== moved),
  };
}

export function standingOf(plan: Plan, band: number): Standing {
  const { groups, firstRow } = bandsOf(plan)[band] ?? { groups: [], firstRow: 1 };
  return {
    first: groups.map(({ block }) => block.first),
    firstRow,
    rises: groups.map((group) => group.firstRow - firstRow),
  };
}

/** What keeps the groups from standing so, or null if they can. */
function whatStops(ground: Ground, standing: Standing): Stop | null {
  const { outline, groups, others } = ground;
  const { first, firstRow, rises } = standing;
  const lastRow = firstRow + heightOf(ground, standing) - 1;
  if (firstRow < 1 || lastRow > outline.rows) return 'end';
  const edges = edgesAt(outline, firstRow);
  let end: number = edges.first;
  for (const [index, { width, height }] of groups.entries()) {
    const own = firstRow + (rises[index] as number);
    const start = first[index] as number;
    const last = start + width - 1;
    if (start < edges.first || last > edges.last) return 'edge';
    if (start < end) return 'group';
    end = last + 1;
    const block = { first: start as Slot, last: last as Slot };
    const wanted = { firstRow: own, lastRow: own + height - 1, block, border: NO_BORDER };
    const met = others.find((other) => copiesOf(other).some((copies) => rowsMet(wanted, copies, outline)));
    if (met) return met.kind;
  }
  return null;
}

/** Rows from the lowest of the groups to the highest. */
function heightOf({ groups }: Pick<Ground, 'groups'>, { rises }: Pick<Standing, 'rises'>): number {
  return Math.max(...groups.map(({ height }, index) => (rises[index] as number) + height));
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

/** Takes one group alone up (or, with a negative number, down) by rows; the other groups stay where they are. */
export function raised(
  ground: Ground,
  from: Standing,
  group: number,
  rows: number,
): { readonly standing: Standing; readonly stop: Stop | null } {
  let standing = from;
  for (let left = Math.abs(rows); left > 0; left--) {
    const rises = standing.rises.map((rise, index) => rise + (index === group ? Math.sign(rows) : 0));
    const lowest = Math.min(...rises);
    const next = { ...standing, firstRow: standing.firstRow + lowest, rises: rises.map((rise) => rise - lowest) };
    const stop = whatStops(ground, next);
    if (stop) return { standing, stop };
    standing = next;
  }
  return { standing, stop: null };
}

/** The change that puts the groups of a band there: by hand, and on that row if it is another one. */
export function changeTo(project: ProjectAt, index: number, ground: Ground, to: Standing, before: Standing): Change {
  const band = bandsOf(project)[index] as Band;
  const position = movedTo(band.position, to.firstRow, heightOf(ground, to), ground.sections);
  if (!isSame(to.rises, before.rises)) {
    const groups = band.groups.map((group, at) => ({ ...group, rise: to.rises[at] ?? group.rise }));
    return changeOf('raise-group', setPattern(project, 'band', index, { groups, position }));
  }
  const placed = { rule: byHandIn(band, to.first), choice: 0 };
  return changeOf(
    'move-group',
    setPattern(project, 'band', index, to.firstRow === before.firstRow ? placed : { ...placed, position }),
  );
}

export function isSameStanding(one: Standing, other: Standing): boolean {
  return one.firstRow === other.firstRow && isSame(one.first, other.first) && isSame(one.rises, other.rises);
}

function isSame(one: readonly number[], other: readonly number[]): boolean {
  return one.every((value, index) => value === other[index]);
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

function sizeOf({ block, firstRow, lastRow }: PlacedGroup): { width: number; height: number } {
  return { width: block.last - block.first + 1, height: lastRow - firstRow + 1 };
}
