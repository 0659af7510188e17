/** One way to take a picture in: for which files it fits, and its dialog. */
import type { Component } from 'svelte';
import type { LengthUnit } from '@shared/length/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import type { Gauge } from '@shared/piece/index.ts';
import type { Outcome, Problem } from '@shared/problem/index.ts';
import type { Change, Project } from '@shared/project/index.ts';
import type { ImporterName } from '@shared/words/en/reading-in.ts';
import type { DecodedPicture } from '../pictures/decode.ts';
import type { GivenPicture } from '../pictures/given.ts';
import type { Session } from '../session/session.ts';
import type { Doubts, ReadDoubts } from '../motif/doubts/doubts.ts';

/** Takes the doubtful cells of a motif that was read; `begin` makes what keeps them. */
export type OnRead = (read: ReadDoubts, begin: (session: Session) => Doubts) => void;

/** What the dialog of an importer is given. */
export interface ImporterProps {
  readonly project: Project;
  /** The one on the bench, in whose place the picture is read. */
  readonly motif: Motif;
  readonly gauge: Gauge;
  readonly unit: LengthUnit;
  readonly picture: DecodedPicture;
  /** What the file is called, without its ending. */
  readonly title: string;
  /** Asks for a further picture of the same chart; null where none is chosen. */
  readonly further: () => Promise<Outcome<DecodedPicture> | null>;
  /** A motif was read, and these of its cells are doubtful. */
  readonly onread: OnRead;
  /** Makes the change that was read, closes the dialog and announces it; the problem where it is refused, and nothing is changed. */
  readonly ontake: (change: Change, said: string) => Problem | null;
  readonly onclose: () => void;
}

export interface Importer {
  readonly name: ImporterName;
  readonly fits: (given: GivenPicture) => boolean;
  /** Null: opened at once, as a new project. */
  readonly dialog: (() => Promise<{ readonly default: Component<ImporterProps> }>) | null;
}
