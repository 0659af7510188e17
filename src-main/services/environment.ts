/** What the services need from outside, so that tests and both shells can give their own. */
import type { Problem } from '@shared/problem/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import type { ExportsAsked } from './export/in-thread.ts';
import type { MadeFile } from './export/index.ts';
import type { FileOperations, Wait } from './files/index.ts';
import type { Waiting } from './worker/index.ts';

/** What only the shell around the services can do. */
export interface Shell {
  readonly kind: Result<'host.describe'>['shell'];
  /** A file named on the command line, absolute, or null. */
  readonly openAtStart: string | null;
  /** True for a file that the person named when starting the program, or gave to it since, absolute. */
  isNamed(path: string): boolean;
  /** The platform's own file dialogs, or null where there are none. Where there are, nothing is reached that they did not choose. */
  readonly dialogs: Dialogs | null;
  /** The platform's own print dialog, or null where the page prints itself. Resolves to whether it printed. Rejects with `not-printed`. */
  readonly print: ((paper: Params<'window.print'>['paper']) => Promise<boolean>) | null;
  setWindowState(state: Params<'window.setState'>): void;
  /** Told of every project read or written, for the platform's own list of recent documents. */
  noteDocument(path: string): void;
  /** Told of what went wrong in the background and stopped nobody. */
  noteProblem(problem: Problem): void;
}

/** Each answers with an absolute path, or null if the person gave up. */
export interface Dialogs {
  openFile(what: Params<'dialogs.openFile'>['what']): Promise<string | null>;
  /** Asks before it answers with a file that is there. */
  saveFile(suggestedName: string): Promise<string | null>;
  chooseFolder(): Promise<string | null>;
}

/** Which run of the program this is, and which others are going on. */
export interface Presence {
  /** Letters, digits and hyphens; no two runs have the same. */
  readonly instance: string;
  isRunning(instance: string): Promise<boolean>;
}

export interface Environment {
  /** Makes files from a project, beside the event loop where that matters. */
  readonly makeExports: (asked: ExportsAsked, waiting?: Waiting) => Promise<readonly MadeFile[]>;
  readonly files: FileOperations;
  readonly now: () => Date;
  readonly wait: Wait;
  readonly presence: Presence;
  readonly shell: Shell;
  /** Where this user's recent list and unsaved work are kept. */
  readonly dataFolder: string;
  readonly homeFolder: string;
  readonly version: string;
}
