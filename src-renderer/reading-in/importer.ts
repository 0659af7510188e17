/** One way to take a picture in: for which files it fits, and its dialog. */
import type { Component } from 'svelte';
import type { ImporterName } from '@shared/words/en/reading-in.ts';
import type { DecodedPicture } from '../pictures/decode.ts';
import type { GivenPicture } from '../pictures/given.ts';
import type { Doubts, ReadDoubts } from '../motif/doubts/doubts.ts';
import type { Session } from '../session/session.ts';

/** Takes the doubtful cells of a motif that was read; `begin` makes what keeps them. */
export type OnRead = (read: ReadDoubts, begin: (session: Session) => Doubts) => void;

/** What the dialog of an importer is given. */
export interface ImporterProps {
  readonly session: Session;
  readonly picture: DecodedPicture;
  /** What the file is called, without its ending. */
  readonly title: string;
  /** A motif was read, and these of its cells are doubtful. */
  readonly onread: OnRead;
  readonly onclose: () => void;
}

export interface Importer {
  readonly name: ImporterName;
  readonly fits: (given: GivenPicture) => boolean;
  /** Null: opened at once, as a new project. */
  readonly dialog: (() => Promise<{ readonly default: Component<ImporterProps> }>) | null;
}
