/** Groups and fills put on their piece, before anything is knitted. */
import { atCarriage, outlineOf, sectionsOf, gaugeAt, gaugesOf, type Gauge } from '../piece/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { assertApart, placeBand } from './bands.ts';
import { extentOf } from './copy.ts';
import { assertFillsApart } from './fills-apart.ts';
import { placeFill } from './fills.ts';
import type { MotifExtent, PlacedPatterns } from './types.ts';
import { outcome } from '../problem/index.ts';

/** Places groups and fills on the piece. Throws what `makePlan` throws: nothing that comes after can be wrong. */
export function placePatterns(piece: KnitPiece): PlacedPatterns {
  const sections = sectionsOf(piece.shape.rows, piece);
  const outline = atCarriage(outlineOf(piece.shape, piece), piece);
  const extents = extentsOf(piece);
  const bands = piece.bands.map((_, index) => placeBand(piece, index, outline, sections, extents));
  assertApart(bands);
  const fills = piece.fills.map((_, index) => placeFill(piece, index, outline, extents));
  assertFillsApart(
    fills,
    bands.flatMap((band) => band.groups),
    outline,
  );
  return { outline, sections, extents, bands, fills };
}

function extentsOf({ bands, fills, mainYarn }: KnitPiece): Map<MotifId, MotifExtent> {
  const extents = new Map<MotifId, MotifExtent>();
  for (const { motif } of [...bands.flatMap(({ groups }) => groups), ...fills]) {
    extents.set(motif.id, extentOf(motif, mainYarn));
  }
  return extents;
}

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
