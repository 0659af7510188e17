/** Cells that are in hand and not laid yet, as plain data: what is kept aside with a project may have some. */
import { CELL_LETTERS, gridFromText } from '../grid/index.ts';
import { outcome } from '../problem/index.ts';
import { changeOf, type Change } from './change.ts';
import { redraw, setMotif } from './edit-makers.ts';
import type { Laying, Project } from './model.ts';

/** The change that lays it, or null if it does not fit the project. */
export function layingChange(project: Project, { name, motif: id, rows, isLettering }: Laying): Change | null {
  const motif = project.motifs.find((each) => each.id === id);
  const read = outcome(() => gridFromText(rows, CELL_LETTERS));
  if (!motif || !read.ok) return null;
  const grid = read.value;
  const isOfItsSize = grid.width === motif.grid.width && grid.height === motif.grid.height;
  if (!isOfItsSize || grid.cells.some((yarn) => yarn >= project.yarns.length)) return null;
  const laid = redraw(motif, grid);
  return isLettering ? changeOf(name, laid, setMotif(id, { isLettering })) : changeOf(name, laid);
}
