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
  let failures = 0;
  const attempt = async (): Promise<Part> => {
    if (program && !(program.isJoined && (await program.look()))) {
      throw problemError('host-unreachable', {});
    }
    try {
      return await load();
    } catch (thrown) {
      if (failures++ === 0) throw thrown;
      return await anew(thrown, failures - 1);
    }
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

/**
 * Fetches a module once more that could not be had. Browsers differ in whether
 * they remember a module that failed (Chromium 150 does, 156 fetches it again);
 * under an address of its own it is fetched in each. The page knows the digest
 * of two such addresses of each script (electron.vite.config.ts). Rejects with
 * `thrown` where its address is not told, or it is not a module with a default
 * export: others are parts of a larger file, whose names here are not those there.
 */
async function anew<Part>(thrown: unknown, time: number): Promise<Part> {
  const address = /dynamically imported module: ([^\s?]+)/.exec(String(thrown))?.[1];
  if (address === undefined) throw thrown;
  // eslint-disable-next-line no-restricted-syntax -- it is latePart that asks, of the address that was asked for before
  const part = (await import(/* @vite-ignore */ `${address}?again=${time}`)) as object;
  if (!('default' in part)) throw thrown;
  return part as Part;
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
