import { at } from '@shared/problem/index.ts';

/** Runs `read`; its problems name `where` (a file, an option) unless they name a place already. */
export function placed<T>(where: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw at(where, error);
  }
}
