/** The patterns of a piece put on it, before anything is knitted. */
import { atCarriage, outlineOf, sectionsOf, gaugeAt, gaugesOf, type Gauge } from '../piece/index.ts';
import type { MotifId } from '../motif/index.ts';
import { copiesIn, namesOf } from '../pattern/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { placeAllOver } from './all-overs.ts';
import { assertApart } from './apart.ts';
import { placeBand } from './bands.ts';
import { extentOf } from './copy.ts';
import { paintedCopies, type PaintedPiece } from './painted.ts';
import type { PlacedPatterns } from './types.ts';
import { outcome } from '../problem/index.ts';

/**
 * Places the patterns on the piece. Throws what `makePlan` throws: nothing that
 * comes after can be wrong. `before`: the piece before its motifs were painted.
 */
export function placePatterns(piece: KnitPiece, before: PaintedPiece | null = null): PlacedPatterns {
  const sections = before?.placed.sections ?? sectionsOf(piece.shape.rows, piece);
  const outline = before?.placed.outline ?? atCarriage(outlineOf(piece.shape, piece), piece);
  const extents = new Map(
    copiesIn(piece).map(({ motif }) => [motif.id, extentOf(motif, piece.mainYarn, before?.motifs.get(motif.id))]),
  );
  const bare = { outline, sections, extents };
  const names = namesOf(piece.patterns);
  const patterns = piece.patterns.map((pattern, index) => {
    const { number } = names[index] as (typeof names)[number];
    const copies = before ? paintedCopies(before, index) : [];
    return pattern.kind === 'band'
      ? placeBand(piece, pattern, number, bare, copies)
      : placeAllOver(piece, pattern, number, bare, copies[0]);
  });
  assertApart(patterns, outline);
  return { ...bare, patterns };
}

/**
 * The gauge of the row on which a motif stands lowest, in whatever pattern;
 * that of the piece if it stands nowhere or the piece cannot be knitted as described.
 */
export function gaugeOfMotif(piece: KnitPiece, motif: MotifId): Gauge {
  const placed = outcome(() => placePatterns(piece));
  if (!placed.ok) return piece.gauge;
  const places = copiesIn(placed.value).filter((place) => place.motif === motif);
  const rows = places.map(({ firstRow }) => firstRow);
  return rows.length === 0 ? piece.gauge : gaugeAt(gaugesOf(piece), Math.min(...rows));
}
