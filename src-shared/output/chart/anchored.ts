/** A chart with the anchors that its copies have on the piece: cells like others, with a ring in each. */
import { widthOf } from '../../bed/index.ts';
import { modulo, type Grid } from '../../grid/index.ts';
import { runOn, tierOf, type PlacedCopies } from '../../fabric/index.ts';
import { stripeAt } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { ChartSubject } from './subject.ts';

/** By cell of a drawing (`row * width + column`), the yarn of the anchor that some copy has there. */
export type AnchorCells = ReadonlyMap<number, number>;

/**
 * The anchors of copies of a drawing, as it is drawn, in all repeats that it
 * shows: those that half of the copies or more have. What the outermost copy
 * alone has towards the next group, or to an edge, is on none.
 */
export function anchorCells(
  { rows, fabric, outline }: Pick<Plan, 'rows' | 'fabric' | 'outline'>,
  places: readonly PlacedCopies[],
  { width, height }: Pick<Grid, 'width' | 'height'>,
): AnchorCells {
  /** By cell of the first repeat, how many copies have one there. */
  const found = new Map<number, { readonly yarn: number; readonly repeat: PlacedCopies['copy']; many: number }>();
  /** By row of a copy, how many copies there are. */
  const copies: number[] = [];
  for (const place of places) {
    for (let row = place.firstRow; row <= place.lastRow; row++) {
      const run = runOn(place, outline, row);
      if (!run) continue;
      const { copyRow, origin } = tierOf(place, row);
      copies[copyRow] = (copies[copyRow] ?? 0) + Math.max(1, Math.floor(widthOf(run) / place.copy.width));
      const stripe = place.colours && stripeAt(place.colours.order, row - place.colours.from);
      for (const needle of rows[row - 1]?.anchors ?? []) {
        if (needle < run.first || needle > run.last) continue;
        const knitted = fabric.cells[(row - 1) * fabric.width + needle - fabric.first] as number;
        const yarn = stripe?.yarns.find((one) => one.knitted === knitted)?.drawn ?? knitted;
        const onNeedles = modulo(needle - origin, place.copy.width);
        const column = place.isMirrored ? place.copy.width - 1 - onNeedles : onNeedles;
        const cell = copyRow * width + column;
        const before = found.get(cell);
        if (before) before.many++;
        else found.set(cell, { yarn, repeat: place.copy, many: 1 });
      }
    }
  }
  const cells = new Map<number, number>();
  for (const [cell, { yarn, repeat, many }] of found) {
    const [column, row] = [cell % width, Math.floor(cell / width)];
    if (2 * many < (copies[row] ?? 0)) continue;
    for (let r = row; r < height; r += repeat.height) {
      for (let c = column; c < width; c += repeat.width) cells.set(r * width + c, yarn);
    }
  }
  return cells;
}

/** The chart with them drawn in; the cells are those of its grid as it lies. */
export function withAnchorCells(subject: ChartSubject, cells: AnchorCells): ChartSubject {
  if (cells.size === 0) return subject;
  const { grid } = subject;
  const drawn = grid.cells.slice();
  for (const [cell, yarn] of cells) drawn[cell] = yarn;
  return { ...subject, grid: { ...grid, cells: drawn }, anchors: new Set(cells.keys()) };
}
