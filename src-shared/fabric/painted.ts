/** A piece of which cells of motifs were painted, and nothing else was changed: what of it is still right. */
import { paintedRows } from '../grid/index.ts';
import type { MotifId } from '../motif/index.ts';
import { copiesIn, copiesOf } from '../pattern/index.ts';
import type { KnitMotif, KnitPiece } from '../project/index.ts';
import type { PlacedCopies, PlacedPatterns } from './types.ts';

/** A piece before it was painted, as it lay. */
export interface PaintedPiece {
  readonly placed: PlacedPatterns;
  readonly motifs: ReadonlyMap<MotifId, PaintedMotif>;
}

/** A motif before it was painted. */
export interface PaintedMotif {
  readonly motif: KnitMotif;
  /** Its rows that were painted, from 0. */
  readonly rows: readonly number[];
}

/** Copies of a motif as they lay before it was painted. */
export interface PaintedCopies {
  readonly place: PlacedCopies;
  /** The rows of the motif that were painted, from 0. */
  readonly rows: readonly number[];
}

/** What became of `before`; it and `piece` are the same but for the cells of their motifs. `placed` is where it lay. */
export function paintedPiece(piece: KnitPiece, before: KnitPiece, placed: PlacedPatterns): PaintedPiece {
  const motifs = new Map(copiesIn(before).map(({ motif }) => [motif.id, motif]));
  return {
    placed,
    motifs: new Map(
      copiesIn(piece).map(({ motif: { id, grid } }) => {
        const motif = motifs.get(id) as KnitMotif;
        const rows = motif.grid === grid ? [] : paintedRows(grid.cells, motif.grid.cells, grid.width);
        return [id, { motif, rows }] as const;
      }),
    ),
  };
}

/** The copies of a pattern (its index in the piece), in their order. */
export function paintedCopies({ placed, motifs }: PaintedPiece, pattern: number): PaintedCopies[] {
  const of = placed.patterns[pattern];
  if (!of) return [];
  return copiesOf(of).map((place) => ({ place, rows: motifs.get(place.motif)?.rows ?? [] }));
}
