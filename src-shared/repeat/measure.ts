/** Everything there is to say about a drawing as it stands. */
import type { Grid } from '../grid/index.ts';
import { blankEdges, type Blank } from './bounds.ts';
import { trueRepeat, type Repeat } from './repeat.ts';

/** Moving up `rows` rows shifts the pattern by `shift` columns. */
export interface Step {
  readonly rows: number;
  readonly shift: number;
}

/** A cell that breaks a repeat which the rest of the drawing keeps. */
export interface Slip {
  readonly column: number;
  readonly row: number;
  readonly expected: number;
}

export interface Measure {
  readonly width: number;
  readonly height: number;
  readonly ground: number;
  /** Null where there is no figure. */
  readonly blank: Blank | null;
  readonly repeat: Repeat;
  readonly step: Step | null;
  readonly slips: readonly Slip[];
}

export function measure(grid: Grid, ground: number): Measure {
  return {
    width: grid.width,
    height: grid.height,
    ground,
    blank: blankEdges(grid, ground),
    repeat: trueRepeat(grid),
    step: null,
    slips: [],
  };
}
