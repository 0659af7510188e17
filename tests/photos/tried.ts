/** Photographs read back and held against what was drawn. */
import {
  finish,
  photoOf,
  proposeGrid,
  readCells,
  type ChartReading,
  type Corners,
  type Levels,
} from '@shared/reading/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { KINDS, type ToldBy } from '../generate/charts/kinds.ts';
import { photographOf, type Photograph } from '../generate/charts/photographs.ts';
import { Chances } from '../generate/charts/random.ts';

export interface Outcome {
  readonly cells: number;
  readonly wrong: number;
  /** Wrong, and not marked as doubtful. */
  readonly unmarked: number;
  readonly marked: number;
  /** As many yarns as were drawn. */
  readonly yarnsRight: boolean;
  /** Columns and rows as proposed are those drawn. */
  readonly countsRight: boolean;
  /** The reading was refused, with this code. */
  readonly refused: string | null;
  /** For each tenth of sureness, how many cells were said to be so sure, and how many of them are right. */
  readonly sure: readonly { readonly said: number; readonly right: number }[];
}

export function levelsFor(toldBy: ToldBy): Levels {
  return toldBy === 'ink' ? { kind: 'ink', figure: 'dark' } : { kind: toldBy, count: null };
}

/** Reads the photograph with corners each off by up to `pixels` in both directions. */
export function tried(photograph: Photograph, pixels: number): Outcome {
  const { picture, corners, grid, toldBy, yarns, seed } = photograph;
  const chances = new Chances(seed + 1);
  const set = corners.map(({ x, y }) => ({
    x: within(x + chances.between(-pixels, pixels), picture.width),
    y: within(y + chances.between(-pixels, pixels), picture.height),
  })) as unknown as Corners;
  const photo = photoOf(picture);
  const cells = grid.cells.length;
  try {
    const proposal = finish(proposeGrid(photo, set));
    const countsRight = proposal.columns?.count === grid.width && proposal.rows?.count === grid.height;
    const reading = finish(readCells(photo, set, grid.width, grid.height, levelsFor(toldBy)));
    return { ...held(reading, grid), cells, countsRight, yarnsRight: reading.colours.length === yarns, refused: null };
  } catch (thrown) {
    const refused = String((thrown as { problem?: { code: string } }).problem?.code ?? thrown);
    return { cells, wrong: 0, unmarked: 0, marked: cells, yarnsRight: false, countsRight: false, refused, sure: [] };
  }
}

/**
 * A reading against what was drawn. Yarns are matched by being most often at
 * the same place, one to one, since a reading names them in its own order.
 */
function held(reading: ChartReading, grid: Grid): Pick<Outcome, 'wrong' | 'unmarked' | 'marked' | 'sure'> {
  const together = new Map<number, number>();
  reading.grid.cells.forEach((yarn, cell) => {
    const pair = yarn * 256 + (grid.cells[cell] as number);
    together.set(pair, (together.get(pair) ?? 0) + 1);
  });
  const meant = new Map<number, number>();
  const taken = new Set<number>();
  for (const [pair] of [...together].sort((a, b) => b[1] - a[1])) {
    const [yarn, drawn] = [pair >> 8, pair & 255];
    if (meant.has(yarn) || taken.has(drawn)) continue;
    meant.set(yarn, drawn);
    taken.add(drawn);
  }
  let [wrong, unmarked, marked] = [0, 0, 0];
  const sure = Array.from({ length: 10 }, () => ({ said: 0, right: 0 }));
  reading.grid.cells.forEach((yarn, cell) => {
    const isWrong = meant.get(yarn) !== grid.cells[cell];
    const isMarked = reading.doubtful[cell] === 1;
    if (isWrong) wrong++;
    if (isMarked) marked++;
    if (isWrong && !isMarked) unmarked++;
    const tenth = sure[Math.min(9, Math.floor((reading.confidence[cell] as number) * 10))] as (typeof sure)[number];
    tenth.said++;
    if (!isWrong) tenth.right++;
  });
  return { wrong, unmarked, marked, sure };
}

function within(value: number, most: number): number {
  return Math.max(0, Math.min(most, value));
}

/** Outcomes of many photographs, summed. */
export class Sums {
  photos = 0;
  cells = 0;
  wrong = 0;
  unmarked = 0;
  marked = 0;
  yarnsRight = 0;
  countsRight = 0;
  refused = 0;
  readonly sure = Array.from({ length: 10 }, () => ({ said: 0, right: 0 }));

  add(outcome: Outcome): void {
    this.photos++;
    this.countsRight += outcome.countsRight ? 1 : 0;
    if (outcome.refused !== null) {
      this.refused++;
      return;
    }
    this.yarnsRight += outcome.yarnsRight ? 1 : 0;
    this.cells += outcome.cells;
    this.wrong += outcome.wrong;
    this.unmarked += outcome.unmarked;
    this.marked += outcome.marked;
    outcome.sure.forEach(({ said, right }, tenth) => {
      const sum = this.sure[tenth] as { said: number; right: number };
      sum.said += said;
      sum.right += right;
    });
  }

  line(name: string): string {
    const share = (part: number, of: number): string => (of === 0 ? '–' : `${((100 * part) / of).toFixed(2)} %`);
    return [
      name.padEnd(30),
      `${this.photos} photos`.padStart(12),
      `right ${share(this.cells - this.wrong, this.cells)}`.padStart(16),
      `wrong unmarked ${this.unmarked}`.padStart(22),
      `marked ${share(this.marked, this.cells)}`.padStart(17),
      `counts ${this.countsRight}/${this.photos}`.padStart(15),
      `yarns ${this.yarnsRight}/${this.photos}`.padStart(13),
      `refused ${this.refused}`.padStart(11),
    ].join(' ');
  }
}

/** Photographs `from` … `from + many - 1`, by kind and together. */
export function triedMany(
  from: number,
  many: number,
  pixels: number,
  each: (p: Photograph, o: Outcome) => void,
): string {
  const all = new Sums();
  const byKind = new Map(KINDS.map((kind) => [kind, new Sums()]));
  for (let seed = from; seed < from + many; seed++) {
    const photograph = photographOf(seed);
    const outcome = tried(photograph, pixels);
    all.add(outcome);
    byKind.get(photograph.kind)?.add(outcome);
    each(photograph, outcome);
  }
  return [
    ...[...byKind].map(([kind, sums]) => sums.line(kind)),
    all.line('all'),
    'Of cells said to be so sure, so many are right:',
    ...all.sure.map(
      ({ said, right }, tenth) =>
        `  ${tenth * 10}–${tenth * 10 + 10} %: ${said === 0 ? '–' : `${((100 * right) / said).toFixed(1)} % of ${said}`}`,
    ),
  ].join('\n');
}
