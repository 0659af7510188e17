/**
 * Who may talk to the host.
 *
 * Anything on this machine can reach a loopback port: another user's program,
 * or a page on the web that guesses it. So the address carries a random key;
 * opening it gives the browser a cookie, and only that cookie opens anything.
 * A command line can be read by every user of the machine, so an address that
 * is handed to a browser there carries a key that opens once.
 */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

export interface Keys {
  /** Opens as often as it is used. For the terminal of the person who started the program. */
  readonly lasting: string;
  /** A new key that opens once. */
  once(): string;
  /** The cookie's value for a good key, else null. */
  admit(key: string): string | null;
  isAdmitted(cookie: string): boolean;
}

export function makeKeys(): Keys {
  const lasting = secret();
  const cookie = secret();
  const unspent = new Set<string>();
  return {
    lasting,
    once() {
      const key = secret();
      unspent.add(key);
      return key;
    },
    admit(key) {
      if (isSame(key, lasting)) return cookie;
      for (const candidate of unspent) {
        if (!isSame(key, candidate)) continue;
        unspent.delete(candidate);
        return cookie;
      }
      return null;
    },
    isAdmitted: (given) => isSame(given, cookie),
  };
}

function secret(): string {
  return randomBytes(32).toString('base64url');
}

/** Takes the same time wherever the two differ. Hashes have one length, so that lengths tell nothing either. */
function isSame(given: string, wanted: string): boolean {
  const hash = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(hash(given), hash(wanted));
}
