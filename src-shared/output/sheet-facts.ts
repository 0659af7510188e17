/** What is printed of a project beside the plan of its piece. */
import { sizesTable, type SizeColumn } from '../fabric/index.ts';
import {
  hasSeveralSizes,
  knittedColourway,
  pieceIn,
  sizeName,
  type KnitMotif,
  type KnitPiece,
  type ProjectAt,
} from '../project/index.ts';

export interface SheetFacts {
  /** What stands above all: the name of the project. */
  readonly title: string;
  /** On the project, for whoever knits it. */
  readonly notes: string;
  readonly piece: KnitPiece;
  /** So many of it are knitted. */
  readonly knit: number;
  /** The project has no other piece: what is on hand is for this one. */
  readonly isOnlyPiece: boolean;
  /** Name of the size that `piece` is in; null where there is but one. */
  readonly size: string | null;
  /** Name of the colourway that it is knitted in; null where there is but one. */
  readonly colourway: string | null;
  /** All sizes side by side, smallest first; empty where there is but one. */
  readonly sizes: readonly SizeColumn[];
  /** All drawings there are. A chart is printed of those that are placed; of the first where none is. */
  readonly motifs: readonly KnitMotif[];
}

/** The facts of a project's piece in its current size. Throws `motif-missing`. */
export function sheetFacts(project: ProjectAt): SheetFacts {
  return {
    title: project.name,
    notes: project.notes,
    piece: pieceIn(project),
    knit: project.knit,
    isOnlyPiece: project.whole.pieces.length === 1,
    size: sizeName(project),
    colourway: project.colourways.length > 1 ? knittedColourway(project).name : null,
    sizes: hasSeveralSizes(project) ? sizesTable(project) : [],
    motifs: project.motifs,
  };
}
