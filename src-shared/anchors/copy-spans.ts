/** The floats of a copy that are over the limit. */
import type { Grid } from '../grid/index.ts';

/** What decides which floats there are. */
export interface CopyWithFloats {
  /** Column 0 is the leftmost needle, row 0 the first row knitted. */
  readonly copy: Grid;
  /** Palette index of the main yarn; all else is figure. */
  readonly main: number;
  /** No float over so many stitches; at least 1. */
  readonly longest: number;
  /** Floats of main behind the figure are broken too. */
  readonly isBehindFigure: boolean;
  /** Other copies stand at its left and right. */
  readonly isBesideItself: boolean;
}

/** A float: its first column and how many it lies behind. */
export interface Span {
  readonly yarn: number;
  readonly first: number;
  readonly length: number;
}

const NO_SPANS: readonly Span[] = [];

/**
 * The floats of a row that are over the limit: of each contrast yarn between
 * two of its stitches, and of main behind the figure where that is asked for.
 * By yarn, and from the left.
 */
export function spansOf(
  { copy, main, longest, isBehindFigure, isBesideItself }: CopyWithFloats,
  row: number,
): readonly Span[] {
  const { width, cells } = copy;
  const start = row * width;
  /** By yarn, the column it knitted first and last. */
  const firstAt = new Map<number, number>();
  const lastAt = new Map<number, number>();
  let spans: Span[] | undefined;
  for (let column = 0; column < width; column++) {
    const yarn = cells[start + column] as number;
    if (yarn === main && !isBehindFigure) continue;
    const last = lastAt.get(yarn);
    if (last === undefined) firstAt.set(yarn, column);
    else if (column - last - 1 > longest) (spans ??= []).push({ yarn, first: last + 1, length: column - last - 1 });
    lastAt.set(yarn, column);
  }
  if (isBesideItself) {
    for (const [yarn, first] of firstAt) {
      const last = lastAt.get(yarn) as number;
      const length = first + width - last - 1;
      if (length > longest) (spans ??= []).push({ yarn, first: (last + 1) % width, length });
    }
  } else if (isBehindFigure) {
    // Beside the copy is main, so what reaches its edge ends there.
    const [first, last] = [firstAt.get(main), lastAt.get(main)];
    const ends =
      first === undefined || last === undefined
        ? [[0, width]]
        : [
            [0, first],
            [last + 1, width - last - 1],
          ];
    for (const [at, length] of ends as [number, number][]) {
      if (length > longest) (spans ??= []).push({ yarn: main, first: at, length });
    }
  }
  return spans?.sort((a, b) => a.yarn - b.yarn || a.first - b.first) ?? NO_SPANS;
}
