/** What is to be seen of the work: of the project as it stands in its history, and of the view of it. */
import type { Motif, MotifId } from '@shared/motif/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import {
  isUnsaved,
  projectAt,
  redoName,
  undoName,
  type ChangeName,
  type History,
  type Laying,
  type Project,
  type ProjectAt,
} from '@shared/project/index.ts';
import type { View } from './view.ts';

/** Where the project stands on disk. */
export interface OpenFile {
  readonly path: string;
  readonly name: string;
  readonly stamp: string;
}

/** Cells on a bench that are in hand: lifted, pasted or set in letters, and not laid in the project yet. */
export interface InHand {
  /** What laying them would change now; null: nothing. */
  laying(): Laying | null;
  lay(): void;
}

/** What is on the table beside the project. */
export interface Beside {
  readonly file: OpenFile | null;
  /** Counts the projects put on the table, so that what is lifted over one does not come down on the next. */
  readonly opened: number;
  /** What is in hand; another object whenever it moved. */
  readonly inHand: InHand | null;
}

export interface Shown extends Beside, Pick<Project, 'yarns' | 'mainYarn' | 'motifs' | 'pieces'> {
  readonly project: Project;
  readonly projectName: string;
  /** The motif on the Motif bench. */
  readonly motif: Motif;
  readonly motifId: MotifId;
  /** The project as it is seen from the piece and in the size that are looked at. */
  readonly current: ProjectAt;
  /** The piece that is looked at, in that size. */
  readonly piece: Piece;
  readonly isUnsaved: boolean;
  readonly undoName: ChangeName | null;
  readonly redoName: ChangeName | null;
}

export function shownOf(history: History, view: View, beside: Beside): Shown {
  const { project } = history;
  const { name: projectName, yarns, mainYarn, motifs, pieces } = project;
  const motif = motifs.find(({ id }) => id === view.motif) ?? motifs[0];
  if (!motif) throw new Error('A project has at least one motif');
  const current = projectAt(project, view);
  const seen = { project, projectName, yarns, mainYarn, motifs, pieces, motif, motifId: motif.id };
  const steps = { isUnsaved: isUnsaved(history), undoName: undoName(history), redoName: redoName(history) };
  return { ...beside, ...seen, current, piece: current.piece, ...steps };
}
