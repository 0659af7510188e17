/** Calls by which a window and a host find each other, before and beside those of the contract. */
import { z } from '../../schema/index.ts';
import { isSecret } from './seal.ts';

/**
 * `enter` is sealed with the key of an address, which opens once; `join` with
 * the run's key, by a page that was loaded again; `rejoin` with the storage
 * key, by a page whose host is gone and that finds another in its place. All
 * three are answered with {@link Joined}.
 */
const JOINING = ['enter', 'join', 'rejoin'] as const;
export type Joining = (typeof JOINING)[number];

/** Says nothing and is answered with nothing: that the host is still there. */
export const HERE = 'here';

/** In the query of an address that lets a window in: it makes each another one. Says nothing, and leaves the address with the key. */
export const VISIT = 'visit';

export function isJoining(method: string): method is Joining {
  return (JOINING as readonly string[]).includes(method);
}

/** No call to join is longer. */
export const MOST_JOINING_BYTES = 1024;

const secret = z.string().check(z.refine(isSecret));

/** What a window is given that may come in. */
const joinedSchema = z.strictObject({
  /** Seals calls until the host ends. */
  runKey: secret,
  /** Seals work that is kept in the browser, for every host of this user. Never written down in the browser. */
  storageKey: secret,
});
export type Joined = z.infer<typeof joinedSchema>;

/** What a window was answered that asked to come in; null if it is nothing of the kind. */
export function joinedFrom(answer: unknown): Joined | null {
  const read = joinedSchema.safeParse(answer);
  return read.success ? read.data : null;
}
