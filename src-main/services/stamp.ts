/** Naming a state of a file. */
import { createHash } from 'node:crypto';

/**
 * The stamp of a file that holds `bytes`. Time plays no part in it: a file that
 * was only touched, or brought back by a synchronising program, holds nothing
 * that a later write could lose.
 */
export function stampOf(bytes: Uint8Array): string {
  return `${bytes.length}-${createHash('sha256').update(bytes).digest('hex')}`;
}
