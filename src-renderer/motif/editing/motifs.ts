/** Changes to the list of motifs: one more, a copy, one less. Pure. */
import { makeGrid } from '@shared/grid/index.ts';
import { copiesOf, namesOf, type PatternInSizes } from '@shared/pattern/index.ts';
import { problemError } from '@shared/problem/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import {
  changeOf,
  insertInto,
  MOST_MOTIFS,
  motifOf,
  removeFrom,
  type Change,
  type Project,
} from '@shared/project/index.ts';
import { assertUnderlaysFit } from '../underlay/placing.ts';

/** The longest name a motif has. */
const LONGEST_NAME = 80;

/** A change of the list, and the motif that lies on the bench after it. */
export interface MotifsStep {
  readonly change: Change;
  readonly shown: MotifId;
}

/** An empty motif behind `like`, of its size, under an `id` that none had. Throws `motifs-too-many`. */
export function addMotif(project: Project, like: MotifId, name: string, id: MotifId): MotifsStep {
  const { shows, grid } = motifOf(project, like);
  const empty = {
    id,
    name,
    shows,
    isLettering: false,
    underlay: null,
    grid: makeGrid(grid.width, grid.height, project.mainYarn),
  };
  return insertBehind(project, 'add-motif', like, empty);
}

/** A copy behind its original, under an `id` that none had. Throws `motifs-too-many`, or `underlays-too-large`. */
export function duplicateMotif(project: Project, original: MotifId, name: string, id: MotifId): MotifsStep {
  const copy = { ...motifOf(project, original), id, name: name.slice(0, LONGEST_NAME) };
  assertUnderlaysFit([...project.motifs, copy].map(({ underlay }) => underlay));
  return insertBehind(project, 'duplicate-motif', original, copy);
}

/** The list without a motif. Throws `motif-last`, or `motif-in-use` while a pattern of a piece knits it. */
export function deleteMotif(project: Project, id: MotifId): MotifsStep {
  const { motifs, pieces } = project;
  const { name } = motifOf(project, id);
  if (motifs.length === 1) throw problemError('motif-last', {});
  for (const piece of pieces) {
    const isOf = (pattern: PatternInSizes): boolean => copiesOf(pattern).some(({ motif }) => motif === id);
    const patterns = namesOf(piece.patterns).filter((_, at) => isOf(piece.patterns[at] as PatternInSizes));
    if (patterns.length === 0) continue;
    throw problemError('motif-in-use', { motif: name, piece: pieces.length > 1 ? piece.name : null, patterns });
  }
  const at = motifs.findIndex((motif) => motif.id === id);
  const left = motifs.filter((motif) => motif.id !== id);
  const shown = left[Math.min(at, left.length - 1)]?.id ?? '';
  return { change: changeOf('delete-motif', removeFrom('motifs', id)), shown };
}

/** The motif `step` places on in the list, round and round. */
export function motifBeside({ motifs }: Project, id: MotifId, step: 1 | -1): MotifId {
  const at = motifs.findIndex((motif) => motif.id === id);
  return motifs[(at + step + motifs.length) % motifs.length]?.id ?? id;
}

function insertBehind(
  { motifs }: Project,
  name: 'add-motif' | 'duplicate-motif',
  before: MotifId,
  motif: Project['motifs'][number],
): MotifsStep {
  if (motifs.length >= MOST_MOTIFS) throw problemError('motifs-too-many', { most: MOST_MOTIFS });
  const at = motifs.findIndex(({ id }) => id === before) + 1;
  return { change: changeOf(name, insertInto('motifs', at, motif)), shown: motif.id };
}
