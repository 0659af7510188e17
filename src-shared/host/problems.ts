/** What a program around the editor answers with: the services with their files, the command line with its options. */
import type { FaultAt } from '../schema/index.ts';

export interface FileProblems {
  'file-missing': Record<string, never>;
  'file-is-folder': Record<string, never>;
  'file-too-large': { bytes: number; most: number };
  'file-not-readable': { detail: string };
  'file-changed-elsewhere': Record<string, never>;
  'file-exists': Record<string, never>;
  /** What is there is no file that the program writes under such a name. */
  'file-of-other-kind': Record<string, never>;
  'file-busy': Record<string, never>;
  'file-name-unusable': { text: string };
  'path-closed': { why: ClosedPath };
  /** Files that are there and that the command line did not write for the same project, or that were changed since. */
  'files-not-from-here': { names: readonly string[] };
  /** Files that are there, where nobody said that they may be replaced. */
  'files-there': { names: readonly string[] };
  'folder-not-writable': { detail: string };
  'disk-full': Record<string, never>;
  'file-not-written': { detail: string };
  /** The platform's word for why nothing came out of the printer. */
  'not-printed': { detail: string };
  /** Kept work that is damaged, or that a newer program kept. */
  'kept-work-unreadable': Record<string, never>;
  'image-too-large': { width: number; height: number; mostPixels: number; mostSide: number };
  'request-invalid': { method: string; wrong: RequestFault };
  'request-refused': { detail: string };
  'host-busy': Record<string, never>;
  'host-unreachable': Record<string, never>;
  /** Ended at its limit of time (`amount` in seconds) or of memory (in MB). */
  'work-stopped': { work: LimitedWork; limit: 'time' | 'memory'; amount: number };
}

/** Numbers and options that a person gives in a call. */
export interface CallProblems {
  'not-a-whole-number': { text: string; least: number; most: number };
  'not-a-number': { text: string };
  /** What SOURCE_DATE_EPOCH says is no moment from 1970 to second `most`. */
  'epoch-unusable': { text: string; most: number };
  'option-unknown': { option: string };
  'option-value': { option: string; text: string; allowed: string };
  'option-missing': { option: string };
  /** Of several options at most one can be given. */
  'options-exclude': { options: readonly string[] };
  'option-empty': { option: string };
  'switch-value': { option: string; text: string };
  'argument-missing': { argument: string };
  'argument-unexpected': { text: string };
  'command-unknown': { text: string };
}

/** Why a request is not carried out, nor its answer given: `unknown`, there is none called so. */
export type RequestFault = 'unknown' | 'not-json' | FaultAt;

/** Work that is ended when it takes too long, or too much memory. */
export type LimitedWork = 'picture' | 'export';

/** Why a path is neither read nor written. */
export type ClosedPath =
  /** Hidden, or in a hidden folder. */
  | 'hidden'
  /** The program's own data. */
  | 'own-data'
  /** Where the platform's dialogs choose, they chose another. */
  | 'not-chosen'
  /** In the folder of the collection, a link that leads out of it. */
  | 'outside'
  /** No ending of a file that the program writes. */
  | 'ending';
