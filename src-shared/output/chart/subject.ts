/** What a chart shows of a motif. */
import { crop, mirrorAcross, type CellBox, type Grid } from '../../grid/index.ts';
import { blankEdges, trueRepeat } from '../../motif/repeat/index.ts';
import type { Motif } from '../../motif/index.ts';
import type { Palette, Yarn } from '../../project/index.ts';

export interface ChartSubject {
  readonly grid: Grid;
  readonly ground: number;
  readonly yarns: readonly Yarn[];
  /** Ground columns at the edges of the repeat, to be hatched. */
  readonly blankLeft: number;
  readonly blankRight: number;
  /** The true repeat, from the bottom left corner. */
  readonly repeat: { readonly width: number; readonly height: number };
  /** Cells (`row * width + column`) that were added to break floats, to be marked. */
  readonly anchors: ReadonlySet<number>;
}

/** A whole drawing as a chart, its true repeat found. */
export function chartOfMotif({ grid }: Pick<Motif, 'grid'>, palette: Palette): ChartSubject {
  const { width, height } = trueRepeat(grid);
  return subjectOf(grid, palette, { width, height });
}

/** One copy as it is placed: `width` columns from the left, all rows. */
export function chartOfCopy(motif: Pick<Motif, 'grid'>, palette: Palette, width: number): ChartSubject {
  const grid = crop(motif.grid, 0, 0, width, motif.grid.height);
  const repeat = trueRepeat(motif.grid);
  return subjectOf(grid, palette, { width: Math.min(repeat.width, width), height: repeat.height });
}

function subjectOf(
  grid: Grid,
  { yarns, mainYarn: ground }: Palette,
  repeat: { readonly width: number; readonly height: number },
): ChartSubject {
  const unit = crop(grid, 0, 0, repeat.width, grid.height);
  const blank = blankEdges(unit, ground);
  const anchors: ReadonlySet<number> = new Set();
  return { grid, ground, yarns, repeat, anchors, blankLeft: blank?.left ?? 0, blankRight: blank?.right ?? 0 };
}

/** The same from the other side of the fabric. */
export function mirrored(subject: ChartSubject): ChartSubject {
  const { grid, blankLeft, blankRight } = subject;
  const anchors = new Set([...subject.anchors].map((cell) => cell + grid.width - 1 - 2 * (cell % grid.width)));
  return { ...subject, grid: mirrorAcross(grid), anchors, blankLeft: blankRight, blankRight: blankLeft };
}

/** All of a chart as one part. */
export function wholeChart({ grid }: ChartSubject): CellBox {
  return { column: 0, row: 0, width: grid.width, height: grid.height };
}

/** Palette indices in use, the ground first, the others in the order of the palette. */
export function yarnsInUse({ grid, ground }: Pick<ChartSubject, 'grid' | 'ground'>): number[] {
  const seen = new Set(grid.cells);
  seen.delete(ground);
  return [ground, ...[...seen].sort((a, b) => a - b)];
}
