/** Everything there is to say about a drawing as it stands. */
import { crop, type Grid } from '../grid/index.ts';
import { blankEdges, type Blank } from './bounds.ts';
import { latticeOf } from './lattice.ts';
import { nearRepeat, type NearRepeat, type Slip } from './near.ts';
import { trueRepeat, type Repeat } from './repeat.ts';

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
  /** A smaller repeat that few cells break, or null. */
  readonly near: NearRepeat | null;
  /** The cells that break it. */
  readonly slips: readonly Slip[];
}

export function measure(grid: Grid, ground: number): Measure {
  const repeat = trueRepeat(grid);
  const near = nearRepeat(grid, ground, repeat);
  return {
    width: grid.width,
    height: grid.height,
    ground,
    blank: blankEdges(grid, ground),
    repeat,
    step: stepOf(grid, repeat),
    near,
    slips: near?.slips ?? [],
  };
}

function stepOf(grid: Grid, { width, height }: Repeat): Step | null {
  const { rows, shift } = latticeOf(crop(grid, 0, 0, width, height));
  return rows < height ? { rows, shift } : null;
}
