/** The gauge at which a motif is knitted. */
import { gaugeAt, gaugesOf, type Gauge } from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import type { MotifId, Project } from '../project/project.ts';
import { layPiece } from './lay-piece.ts';

/**
 * The gauge of the row on which a motif stands lowest, in a group or a fill;
 * that of the piece if it stands nowhere or the piece cannot be laid.
 */
export function gaugeOfMotif(project: Project, motif: MotifId): Gauge {
  const { piece } = project;
  const laid = outcome(() => layPiece(project));
  if (!laid.ok) return piece.gauge;
  const { bands, fills } = laid.value;
  const places = [...bands.flatMap(({ groups }) => groups), ...fills].map(({ place }) => place);
  const rows = places.filter((place) => place.motif === motif).map(({ firstRow }) => firstRow);
  return rows.length === 0 ? piece.gauge : gaugeAt(gaugesOf(piece), Math.min(...rows));
}
