/** The way to the services, whichever shell is around the window, and whether it is open. */
import type { Host } from '@shared/host/index.ts';
import { MOST_CALL_BYTES } from '@shared/host/sealed/index.ts';
import type { Outcome } from '@shared/problem/index.ts';

/** What became of the way to the host: it is gone, or there again (the same host, or a new one in its place). */
export type Standing = 'lost' | 'rejoined';

export interface Connection {
  readonly host: Host;
  /** Whether calls reach the services, as far as is known. While it is false each call fails at once, `host-unreachable`. */
  readonly isJoined: boolean;
  /** Tells of every change from now on. Returns a function that stops. */
  onStanding(listener: (standing: Standing) => void): () => void;
  /** Looks now, without waiting for the next look: whether the host is there, or there again. */
  look(): Promise<boolean>;
  /** Seals work that is kept in the browser's own storage; null in Electron, where the services outlive the window. */
  readonly storage: StorageSeal | null;
}

/**
 * Work that is kept in the browser lies where whoever has the host's address
 * next can read it. Sealed, it is of no use to anybody but the hosts of this
 * user, at this address or another.
 */
export interface StorageSeal {
  /** `name` is what it is kept under, plain ASCII: what was sealed under one name opens under no other. */
  sealForStorage(name: string, text: string): Promise<Uint8Array<ArrayBuffer>>;
  /** The text, or null if this was not sealed under that name by a window of this user, or is not whole. */
  openFromStorage(name: string, sealed: Uint8Array<ArrayBuffer>): Promise<string | null>;
}

/** Why a window is not let in. */
export type Outside =
  /** Its address has no key, and nothing is left of an earlier one. */
  | 'no-key'
  /** The key was used before, its time is over, or the program that gave it has ended. */
  | 'key-refused'
  /** Nothing that could be our host answers. */
  | 'nobody';

export type Entered =
  { readonly kind: 'in'; readonly connection: Connection } | { readonly kind: 'outside'; readonly why: Outside };

export const UNREACHABLE: Outcome<never> = {
  ok: false,
  problem: { code: 'host-unreachable', where: null, facts: {} },
};

/** For a call that no host would read. */
export function tooLarge(bytes: number): Outcome<never> {
  return { ok: false, problem: { code: 'file-too-large', where: null, facts: { bytes, most: MOST_CALL_BYTES } } };
}

/** True for what both shells answer. What is inside was checked before it was sent. */
export function isOutcome(answer: unknown): answer is Outcome<unknown> {
  return typeof answer === 'object' && answer !== null && typeof (answer as { ok?: unknown }).ok === 'boolean';
}
