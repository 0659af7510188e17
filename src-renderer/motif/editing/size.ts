/** Making a motif wider, narrower, taller or lower, on the side that is chosen. */
import { resize, type Cell, type Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { changeOf, setMotif, type Change } from '@shared/project/index.ts';
import { overhangOf, type Overhang } from './overhang.ts';

/** Where columns and rows are put in or taken away. */
export interface GrowingSides {
  readonly columns: 'left' | 'right';
  readonly rows: 'top' | 'bottom';
}

/** Where the lower left cell of the drawing comes to stand. */
function startOf(drawn: Grid, width: number, height: number, sides: GrowingSides): Cell {
  return {
    column: sides.columns === 'left' ? width - drawn.width : 0,
    row: sides.rows === 'bottom' ? height - drawn.height : 0,
  };
}

/** What another size leaves off of the figure that is `drawn` on the ground; null if nothing. */
export function resizeOverhang(
  drawn: Grid,
  ground: number,
  width: number,
  height: number,
  sides: GrowingSides,
): Overhang | null {
  return overhangOf({ width, height }, ground, { cells: drawn, at: startOf(drawn, width, height, sides) });
}

/**
 * The motif in another size. `drawn` is the drawing from before the gesture, so
 * that typing `1` on the way to `12` does not cut it for good. New cells are
 * `ground`. Throws `motif-too-large`.
 */
export function resizeChange(
  motif: Motif,
  drawn: Grid,
  ground: number,
  width: number,
  height: number,
  sides: GrowingSides,
): Change {
  const { column, row } = startOf(drawn, width, height, sides);
  const grid = resize(drawn, width, height, ground, column, row);
  return changeOf('resize-motif', setMotif(motif.id, { grid }));
}
