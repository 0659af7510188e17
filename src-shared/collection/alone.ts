/**
 * A motif by itself, as the collection keeps it: a project of its own that
 * holds nothing else, so that its file is checked, migrated and opened as any
 * project is.
 */
import type { Motif, MotifId } from '../motif/index.ts';
import { problemError } from '../problem/index.ts';
import { motifOf, projectAround, yarnsUsed, type Project, type Yarn } from '../project/index.ts';

/**
 * The project that holds this motif and the yarns that it is drawn in, the
 * ground among them. A picture to trace belongs to the work and stays there.
 * Throws `motif-missing`.
 */
export function motifAlone(project: Project, id: MotifId): Project {
  const { name, shows, isLettering, grid } = motifOf(project, id);
  const used = yarnsUsed(grid, project.mainYarn);
  const places = new Map(used.map((yarn, place) => [yarn, place]));
  const cells = grid.cells.map((cell) => places.get(cell) as number);
  const yarns = used.map((yarn) => project.yarns[yarn] as Yarn);
  const ground = used.indexOf(project.mainYarn);
  const alone = projectAround(name, name, { ...grid, cells }, ground, shows, yarns);
  return { ...alone, motifs: alone.motifs.map((motif) => ({ ...motif, isLettering })) };
}

/** The motif of a project that holds one. Throws `motifs-several`. */
export function onlyMotif({ motifs }: Pick<Project, 'motifs'>): Motif {
  if (motifs.length !== 1) throw problemError('motifs-several', { motifs: motifs.length });
  return motifs[0] as Motif;
}
