/**
 * Parts of the program that are loaded when they are first asked for.
 *
 * They come from the host's port. While the host is away another program may
 * have it, so nothing is asked for there then; and the host is asked whether it
 * is there before each, for it may just have gone.
 */
import { problemError, problemOf } from '@shared/problem/index.ts';

/** What is needed of the connection to the program behind the window. */
interface Program {
  readonly isJoined: boolean;
  look(): Promise<boolean>;
  onStanding(listener: (standing: 'lost' | 'rejoined') => void): () => void;
}

let program: Program | null = null;

/** From now on parts are loaded only while that program is there. */
export function loadPartsFrom(from: Program): void {
  program = from;
}

/**
 * A part that is loaded when it is first asked for, and had from then on.
 * Rejects with `host-unreachable` while the program is away, and with what
 * `load` rejects with; it may be asked for again.
 */
export function latePart<Part>(load: () => Promise<Part>): () => Promise<Part> {
  let loaded: Promise<Part> | null = null;
  const attempt = async (): Promise<Part> => {
    if (program && !(program.isJoined && (await program.look()))) {
      throw problemError('host-unreachable', {});
    }
    return load();
  };
  return () => {
    const mine = loaded ?? attempt();
    loaded = mine;
    mine.catch(() => {
      if (loaded === mine) loaded = null;
    });
    return mine;
  };
}

/** True for what {@link latePart} rejects with while the program is away. */
export function isAway(thrown: unknown): boolean {
  return problemOf(thrown).code === 'host-unreachable';
}

/** Looks now whether the program is there again. */
export async function lookForProgram(): Promise<void> {
  await program?.look();
}

/** Calls `back` each time the program is there again. Returns a function that stops. */
export function whenProgramIsBack(back: () => void): () => void {
  return program?.onStanding((standing) => standing === 'rejoined' && back()) ?? (() => undefined);
}
