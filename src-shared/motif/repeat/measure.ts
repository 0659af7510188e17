/** Everything there is to say about a drawing as it stands. */
import { crop, type Grid } from '../../grid/index.ts';
import { blankEdges, type Blank } from './bounds.ts';
import { blocksOf, type Block } from './blocks.ts';
import { latticeOf, type Lattice } from './lattice.ts';
import { nearRepeat, type NearRepeat, type Slip } from './near.ts';
import { trueRepeat, type Repeat } from './repeat.ts';
import { startsAcross, type Starts } from './trim.ts';
import { bitCount } from './bit-planes.ts';

/** Moving up `rows` rows shifts the pattern by `shift` columns. */
export interface Step {
  readonly rows: number;
  readonly shift: number;
}

export interface Measure {
  readonly width: number;
  readonly height: number;
  readonly ground: number;
  /** Null where there is no figure. */
  readonly blank: Blank | null;
  readonly repeat: Repeat;
  /** The smaller move that repeats the pattern within the true repeat, or null. */
  readonly step: Step | null;
  /** The blocks that a stepped plane can be laid with, the one first that cuts the figure least; none where copies stand straight. */
  readonly blocks: readonly Block[];
  /** A smaller repeat that few cells break, or null. */
  readonly near: NearRepeat | null;
  /** The cells that break it. */
  readonly slips: readonly Slip[];
  /** Where one repeat may start so that its blank columns stand first, or last. */
  readonly starts: Starts;
  /** Rows with more than two yarns. */
  readonly manyYarns: readonly number[];
}

/** What a drawing with this ground is: bounds, repeat, step, near repeat, and where it may be trimmed. */
export function measure(grid: Grid, ground: number): Measure {
  const repeat = trueRepeat(grid);
  const near = nearRepeat(grid, ground, repeat);
  const tile = crop(grid, 0, 0, repeat.width, repeat.height);
  const lattice = latticeOf(tile);
  const step = stepOf(lattice, repeat);
  return {
    width: grid.width,
    height: grid.height,
    ground,
    blank: blankEdges(grid, ground),
    repeat,
    step,
    blocks: step ? blocksOf(tile, lattice, ground) : [],
    near,
    slips: near?.slips ?? [],
    starts: startsAcross(grid, repeat, ground),
    manyYarns: rowsOfManyYarns(grid),
  };
}

/** What is seen at a glance: bounds, and the whole drawing as its own repeat. For drawings whose measure is not there yet. */
export function measureRoughly(grid: Grid, ground: number): Measure {
  const { width, height } = grid;
  return {
    width,
    height,
    ground,
    blank: blankEdges(grid, ground),
    repeat: { width, height, dividesAcross: true, dividesUp: true },
    step: null,
    blocks: [],
    near: null,
    slips: [],
    starts: { blankFirst: 0, blankLast: 0, blank: 0 },
    manyYarns: [],
  };
}

function stepOf({ rows, shift }: Lattice, { height }: Repeat): Step | null {
  return rows < height ? { rows, shift } : null;
}

/** Stitches and rows drawn of the copies that are clipped at the right and at the top; 0: none is. */
export function clippedCopies({ width, height, repeat }: Pick<Measure, 'width' | 'height' | 'repeat'>): {
  readonly stitches: number;
  readonly rows: number;
} {
  return { stitches: width % repeat.width, rows: height % repeat.height };
}

/** The rows of the drawing with more than two yarns, from the bottom. One look at every cell. */
export function rowsOfManyYarns({ width, height, cells }: Grid): number[] {
  const rows: number[] = [];
  for (let row = 0, at = 0; row < height; row++) {
    // A bit a yarn, in two words; branching on every cell would cost five times as much.
    let low = 0;
    let high = 0;
    for (const end = at + width; at < end; at++) {
      const cell = cells[at] as number;
      if (cell < 32) low |= 1 << cell;
      else high |= 1 << (cell - 32);
    }
    if (bitCount(low) + bitCount(high) > 2) rows.push(row);
  }
  return rows;
}

/** Runs of neighbours in ascending numbers: 3, 4, 5, 9 are 3–5 and 9–9. */
export function runsOf(numbers: readonly number[]): { first: number; last: number }[] {
  const runs: { first: number; last: number }[] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run?.last === number - 1) run.last = number;
    else runs.push({ first: number, last: number });
  }
  return runs;
}
