/** Motifs as tests draw them. */
import { gridFromText, type Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';

/** Of lines in `.` for the ground, `#` and `o`, the topmost row first, or of a grid. */
export function drawnMotif(drawing: readonly string[] | Grid, id = 'm'): Motif {
  const grid = 'cells' in drawing ? drawing : gridFromText(drawing, '.#o');
  return { id, name: id, grid, shows: 'worn', isLettering: false, underlay: null };
}
