/** The gauge at which a motif is knitted. */
import { gaugeAt, gaugesOf, type Gauge } from '../piece/index.ts';
import { outcome } from '../problem/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { placePatterns } from './place-patterns.ts';

/**
 * The gauge of the row on which a motif stands lowest, in a group or a fill;
 * that of the piece if it stands nowhere or the piece cannot be knitted as described.
 */
export function gaugeOfMotif(piece: KnitPiece, motif: MotifId): Gauge {
  const placed = outcome(() => placePatterns(piece));
  if (!placed.ok) return piece.gauge;
  const { bands, fills } = placed.value;
  const places = [...bands.flatMap(({ groups }) => groups), ...fills];
  const rows = places.filter((place) => place.motif === motif).map(({ firstRow }) => firstRow);
  return rows.length === 0 ? piece.gauge : gaugeAt(gaugesOf(piece), Math.min(...rows));
}
