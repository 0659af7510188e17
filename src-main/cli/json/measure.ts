/** The JSON of `measure`. Rows and stitches in it are counted as charts are read: row 1 at the bottom, stitch 1 at the left. */
import type { Grid } from '@shared/grid/index.ts';
import { clippedCopies, halfStep, type Blank, type Measure } from '@shared/motif/repeat/index.ts';
import type { Yarn } from '@shared/project/index.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** A cell that breaks the near repeat; colours are `#rrggbb`. */
export interface SlipJson {
  readonly row: number;
  readonly stitch: number;
  readonly drawn: string;
  readonly expected: string;
}

export interface MeasureJson extends Size {
  /** `#rrggbb` */
  readonly ground: string;
  /** Null where there is no figure. */
  readonly blank: Blank | null;
  readonly repeat: Size & { readonly dividesAcross: boolean; readonly dividesUp: boolean };
  /** What is drawn of the copies cut at the right and at the top; 0: none is cut. */
  readonly cut: { readonly stitches: number; readonly rows: number };
  /** Null where copies stand straight; `halfDrop` and `brick` are the two ways to see a step by half, else null. */
  readonly step: {
    readonly rows: number;
    readonly shift: number;
    readonly halfDrop: Size | null;
    readonly brick: Size | null;
  } | null;
  /** A smaller repeat that few cells break, or null. */
  readonly near: Size | null;
  readonly slips: readonly SlipJson[];
  /** Rows with more than two yarns. */
  readonly rowsOfManyYarns: readonly number[];
  readonly trims: {
    /** One repeat: where it starts to have its blank columns first, or last. */
    readonly repeat: Size & {
      readonly blankColumns: number;
      readonly firstStitchForBlankFirst: number;
      readonly firstStitchForBlankLast: number;
    };
    /** Without blank edges; null where there is no figure. */
    readonly withoutBlank: (Size & { readonly firstStitch: number; readonly firstRow: number }) | null;
  };
}

export function measureJson(measure: Measure, grid: Grid, yarns: readonly Yarn[]): MeasureJson {
  const { width, height, blank, repeat, step, near, starts } = measure;
  const colour = (yarn: number): string => (yarns[yarn] as Yarn).colour;
  const half = halfStep(measure);
  return {
    width,
    height,
    ground: colour(measure.ground),
    blank: blank && { left: blank.left, right: blank.right, top: blank.top, bottom: blank.bottom },
    repeat: {
      width: repeat.width,
      height: repeat.height,
      dividesAcross: repeat.dividesAcross,
      dividesUp: repeat.dividesUp,
    },
    cut: clippedCopies(measure),
    step: step && {
      rows: step.rows,
      shift: step.shift,
      halfDrop: half?.halfDrop ?? null,
      brick: half?.brick ?? null,
    },
    near: near && { width: near.width, height: near.height },
    slips: measure.slips.map(({ column, row, expected }) => ({
      row: row + 1,
      stitch: column + 1,
      drawn: colour(grid.cells[row * width + column] as number),
      expected: colour(expected),
    })),
    rowsOfManyYarns: measure.manyYarns.map((row) => row + 1),
    trims: {
      repeat: {
        width: repeat.width,
        height: repeat.height,
        blankColumns: starts.blank,
        firstStitchForBlankFirst: starts.blankFirst + 1,
        firstStitchForBlankLast: starts.blankLast + 1,
      },
      withoutBlank: blank && {
        width: width - blank.left - blank.right,
        height: height - blank.top - blank.bottom,
        firstStitch: blank.left + 1,
        firstRow: blank.bottom + 1,
      },
    },
  };
}
