/** The cells of a piece as it is worn, to look at in other colours. */
import { crop, mirrorAcross, type Grid } from '@shared/grid/index.ts';
import { planFor } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';

/** More rows than this are not told apart in a sketch: it shows the lowest, where bands stand. */
const MOST_ROWS = 400;

/** All that is knitted, seen from the finished face; the motif that is drawn where the piece cannot be knitted as described. */
export function cellsOf(project: ProjectAt): Grid {
  const planned = planFor(pieceIn(project));
  if (!planned.ok) return (project.motifs[0] as ProjectAt['motifs'][number]).grid;
  const { width, rows, cells } = planned.value.fabric;
  const knitted = crop({ width, height: rows, cells }, 0, 0, width, Math.min(rows, MOST_ROWS));
  return project.piece.finishedFace === 'knit' ? mirrorAcross(knitted) : knitted;
}

/** Colours by what a cell of a fabric may hold: what lies beside the piece is left open. */
export function coloursOf(yarns: ProjectAt['yarns']): (string | null)[] {
  const colours = new Array<string | null>(256).fill(null);
  yarns.forEach(({ colour }, index) => (colours[index] = colour));
  return colours;
}
