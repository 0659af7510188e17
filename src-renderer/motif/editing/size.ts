/** Making a motif wider, narrower, taller or lower, on the side that is chosen. */
import { resize, type Grid } from '@shared/grid/index.ts';
import type { Change, Motif } from '@shared/project/index.ts';

/** Where columns and rows are put in or taken away. */
export interface GrowingSides {
  readonly columns: 'left' | 'right';
  readonly rows: 'top' | 'bottom';
}

/**
 * The motif in another size. `drawn` is the drawing from before the gesture, so
 * that typing `1` on the way to `12` does not cut it for good. New cells are
 * ground. Throws `motif-too-large`.
 */
export function resizeChange(motif: Motif, drawn: Grid, width: number, height: number, sides: GrowingSides): Change {
  const left = sides.columns === 'left' ? width - drawn.width : 0;
  const bottom = sides.rows === 'bottom' ? height - drawn.height : 0;
  const grid = resize(drawn, width, height, motif.ground, left, bottom);
  return { name: 'resize-motif', kind: 'motif', motif: motif.id, to: { grid } };
}
