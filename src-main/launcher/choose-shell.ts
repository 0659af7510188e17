/** Electron or the browser. */
import type { BrowserReason } from '@shared/words/index.ts';
import type { ShellName } from './arguments.ts';
import type { ElectronPackage } from './electron-package.ts';

export type Choice =
  | { readonly shell: 'electron'; readonly binary: string }
  | { readonly shell: 'browser'; readonly why: BrowserReason }
  /** Electron was asked for and cannot be had. */
  | { readonly shell: null; readonly why: BrowserReason };

/** What is known of this machine, and how to fetch what is missing. */
export interface Surroundings {
  readonly hasDisplay: boolean;
  readonly electron: ElectronPackage | null;
  binary(electron: ElectronPackage): string | null;
  /** Null when it is there, else what stood in its way. */
  fetch(electron: ElectronPackage): Promise<string | null>;
  /** Remembers that this version could not be fetched, so that one start alone waits for it. */
  readonly failure: {
    /** Where that is noted, or null if it is not. */
    noted(version: string): Promise<string | null>;
    note(version: string): Promise<void>;
  };
}

/** `asked` is what the person wants, or null: Electron if it can be had. */
export async function chooseShell(asked: ShellName | null, surroundings: Surroundings): Promise<Choice> {
  if (asked === 'browser') return { shell: 'browser', why: { kind: 'asked' } };
  const found = await findElectron(asked === 'electron', surroundings);
  if (typeof found === 'string') return { shell: 'electron', binary: found };
  return { shell: asked === 'electron' ? null : 'browser', why: found };
}

/** The binary, or why there is none. Who asks for it has it tried again. */
async function findElectron(isAsked: boolean, surroundings: Surroundings): Promise<string | BrowserReason> {
  const { hasDisplay, electron, failure } = surroundings;
  // Without a display there is nothing that a binary could do, so none is fetched.
  if (!hasDisplay) return { kind: 'no-display' };
  if (!electron) return { kind: 'not-installed' };
  const present = surroundings.binary(electron);
  if (present !== null) return present;

  const note = isAsked ? null : await failure.noted(electron.version);
  if (note !== null) return { kind: 'fetch-failed-before', note };
  const obstacle = await surroundings.fetch(electron);
  const fetched = obstacle === null ? surroundings.binary(electron) : null;
  if (fetched !== null) return fetched;
  await failure.note(electron.version);
  return { kind: 'fetch-failed', detail: obstacle ?? '' };
}
