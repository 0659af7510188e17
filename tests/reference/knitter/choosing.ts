/**
 * How the machine chooses: the pass of row n − 1 brings forward the needles
 * that knit contrast in row n, if selecting is on and a pattern is set.
 *
 * Left open and read kindly: the machine counts rows while selecting is off,
 * so a pattern goes on where it is after a row of one yarn, whether it is set
 * again or not; what it chooses above a pattern's last row nobody knows (some
 * begin again), and it does not matter while that row is knitted plain.
 */
import type { Bed } from './bed.ts';
import type { Machine, Patterns, Picture } from './machine.ts';
import { each, labelOf } from './needles.ts';
import type { ActOf } from './order.ts';
import { refuse } from './refusal.ts';

type Group = ActOf<'first-needles'>['groups'][number];

interface Program {
  readonly pattern: string;
  /** The piece's row that is the pattern's first. */
  readonly base: number;
  /** The first row that it is set for. */
  readonly row: number;
  readonly groups: readonly { readonly group: Group; readonly picture: Picture }[];
  readonly height: number;
}

/** What is known of the needles of the coming row. */
export type Choice = 'none' | 'made' | 'unknown';

export class Choosing {
  isSelecting = false;
  private hasEndNeedles: boolean;
  private program: Program | null = null;
  private readonly bases = new Map<string, number>();
  /** The edge needles that the pattern of the row chosen last leaves to end-needle selection. */
  edgesLeft: readonly number[] = [];

  constructor(
    private readonly machine: Machine,
    private readonly patterns: Patterns,
  ) {
    this.hasEndNeedles = machine.endNeedles === 'always';
  }

  select(on: boolean): void {
    if (on) this.mayChoose();
    this.isSelecting = on;
  }

  setEndNeedles(on: boolean): void {
    this.mayChoose();
    if (this.machine.endNeedles !== 'switch') refuse('this machine has no switch for its end needles');
    this.hasEndNeedles = on;
  }

  /** Sets the pattern from a row of the piece on. */
  set({ pattern, row, groups }: ActOf<'first-needles'>): void {
    this.mayChoose();
    const pictures = this.patterns[pattern] ?? refuse(`the machine has no picture of ${pattern}`);
    if (pictures.length !== groups.length) refuse(`${pattern} has ${pictures.length} groups, not ${groups.length}`);
    const height = Math.max(...pictures.map(({ rows }) => rows.length));
    const before = this.bases.get(pattern);
    const base = before !== undefined && row >= before && row < before + height ? before : row;
    this.bases.set(pattern, base);
    this.program = {
      pattern,
      base,
      row,
      height,
      groups: groups.map((group, at) => ({ group, picture: fitting(group, pictures[at] as Picture) })),
    };
    this.standsOnPlaces(this.program);
  }

  /** Brings the needles of a row forward, at the end of the pass before it. */
  choose(row: number, bed: Bed): Choice {
    if (!this.isSelecting) return 'none';
    const program = this.program ?? refuse('selecting is on and no pattern is set');
    if (row < program.row) {
      refuse(`the pass of row ${row - 1} would choose row ${program.row} of ${program.pattern} already`);
    }
    const at = row - program.base;
    if (at >= program.height) return 'unknown';
    const chosen = new Set(program.groups.flatMap(({ group, picture }) => chosenBy(group, picture, at, bed.inWork)));
    this.edgesLeft = bed.edges.filter((edge) => !chosen.has(edge));
    if (this.hasEndNeedles) for (const edge of bed.edges) chosen.add(edge);
    for (const needle of chosen) if (bed.isInWork(needle)) bed.push(needle, 'forward');
    return 'made';
  }

  /** Whether the waste rows' last pass can choose the first row of the piece. */
  get startsWithPattern(): boolean {
    return this.isSelecting && this.program?.row === 1;
  }

  private mayChoose(): void {
    if (this.machine.chooses === 'by-hand') refuse('this machine does not choose needles');
  }

  /** On fixed places needles that are `repeat` apart are chosen alike, from the first group to the last, or as far as a picture reaches: those between stay back. */
  private standsOnPlaces({ groups, height }: Program): void {
    const { places } = this.machine;
    if (places === 'any-needle') return;
    const { repeat, from } = places;
    const ends = groups.flatMap(({ group, picture }) => [
      picture.reach?.[0] ?? group.needle,
      picture.reach?.[1] ?? (picture.isEverywhere ? group.needle + repeat * picture.width - 1 : group.last),
    ]);
    const needles = each([Math.min(...ends), Math.max(...ends)]);
    for (let at = 0; at < height; at++) {
      const chosen = new Set(groups.flatMap(({ group, picture }) => chosenBy(group, picture, at, needles)));
      const isChosen = new Map<number, boolean>();
      for (const needle of needles) {
        const place = (((needle - from) % repeat) + repeat) % repeat;
        if ((isChosen.get(place) ?? chosen.has(needle)) !== chosen.has(needle)) {
          refuse(`${labelOf(needle)} cannot be chosen otherwise than the needles ${repeat} away from it`);
        }
        isChosen.set(place, chosen.has(needle));
      }
    }
  }
}

/** The picture of a group, once the group is seen to be whole copies of it. */
function fitting(group: Group, picture: Picture): Picture {
  if (picture.motif !== group.motif) refuse(`the machine reads ${picture.motif} there, not ${group.motif}`);
  const needles = group.last - group.needle + 1;
  if (!picture.isEverywhere && picture.width !== needles && picture.width * group.copies !== needles) {
    refuse(`${group.copies} of ${picture.width} needles do not fill ${labelOf(group.needle)}–${labelOf(group.last)}`);
  }
  return picture;
}

function chosenBy(
  group: Group,
  { rows, width, isEverywhere, reach }: Picture,
  at: number,
  needles: number[],
): number[] {
  const columns = new Set(rows[at] ?? []);
  return needles.filter((needle) => {
    if (reach && (needle < reach[0] || needle > reach[1])) return false;
    if (!isEverywhere && (needle < group.needle || needle > group.last)) return false;
    const column = (((needle - group.needle) % width) + width) % width;
    return columns.has(group.mirrored ? width - 1 - column : column);
  });
}
