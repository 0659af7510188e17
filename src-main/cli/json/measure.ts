/** The JSON of `measure`. Rows and stitches in it are counted as charts are read: row 1 at the bottom, stitch 1 at the left. */
import { crop, type Grid } from '@shared/grid/index.ts';
import {
  blocksOf,
  clippedCopies,
  differencesOf,
  latticeOf,
  proposedOf,
  type Blank,
  type Block,
  type Measure,
} from '@shared/motif/repeat/index.ts';
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
  /** Null where as many copies have one colour as another: then every copy is listed. */
  readonly expected: string | null;
}

/** A place of the near repeat where copies differ. */
interface DifferenceJson {
  /** Most copies first; where each is drawn first. */
  readonly versions: readonly {
    readonly colour: string;
    readonly copies: number;
    readonly row: number;
    readonly stitch: number;
  }[];
  /** What most copies have, or null where it is for the knitter to choose. */
  readonly proposed: string | null;
}

/** A block, how it is laid, and where one starts that cuts the figure least. */
interface BlockJson extends Size {
  readonly laid: 'straight' | 'half-drop' | 'stepped-columns' | 'brick' | 'stepped-courses';
  /** Stitches that each next course stands to the right, or rows that each next column stands higher. */
  readonly step: number;
  readonly firstStitch: number;
  readonly firstRow: number;
  /** Pairs of figure cells that its border parts: side by side, and corner to corner. */
  readonly cuts: { readonly sides: number; readonly corners: number };
}

export interface MeasureJson extends Size {
  /** `#rrggbb` */
  readonly ground: string;
  /** Null where there is no figure. */
  readonly blank: Blank | null;
  readonly repeat: Size & { readonly dividesAcross: boolean; readonly dividesUp: boolean };
  /** What is drawn of the copies cut at the right and at the top; 0: none is cut. */
  readonly cut: { readonly stitches: number; readonly rows: number };
  /** Null where copies stand straight. */
  readonly step: { readonly rows: number; readonly shift: number } | null;
  /** The blocks that fill the plane: the one first that cuts the figure least. Of copies that stand straight there is one. */
  readonly blocks: readonly BlockJson[];
  /** A smaller repeat that few cells break, or null. */
  readonly near: Size | null;
  readonly slips: readonly SlipJson[];
  /** The same by places of the repeat. */
  readonly differences: readonly DifferenceJson[];
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
  const tile = crop(grid, 0, 0, repeat.width, repeat.height);
  const blocks = step ? measure.blocks : blocksOf(tile, latticeOf(tile), measure.ground);
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
    step: step && { rows: step.rows, shift: step.shift },
    blocks: blocks.map(blockJson),
    near: near && { width: near.width, height: near.height },
    slips: measure.slips.map(({ column, row, expected }) => ({
      row: row + 1,
      stitch: column + 1,
      drawn: colour(grid.cells[row * width + column] as number),
      expected: expected === null ? null : colour(expected),
    })),
    differences: differencesOf(measure, grid).map((versions) => {
      const proposed = proposedOf(versions);
      return {
        versions: versions.map(({ colour: yarn, copies, first }) => ({
          colour: colour(yarn),
          copies,
          row: first.row + 1,
          stitch: first.column + 1,
        })),
        proposed: proposed && colour(proposed.colour),
      };
    }),
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

function blockJson({ laid, width, height, step, column, row, cuts, corners }: Block): BlockJson {
  const isHalf = step * 2 === (laid === 'courses' ? width : height);
  const names = {
    straight: 'straight',
    columns: isHalf ? 'half-drop' : 'stepped-columns',
    courses: isHalf ? 'brick' : 'stepped-courses',
  } as const;
  return {
    laid: names[laid],
    width,
    height,
    step,
    firstStitch: column + 1,
    firstRow: row + 1,
    cuts: { sides: cuts, corners },
  };
}
