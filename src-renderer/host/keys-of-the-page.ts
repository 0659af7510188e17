/** Where the page has its keys from: the address that it was opened with, and its session. */
import { isSecret, VISIT } from '@shared/host/sealed/index.ts';

/** What is needed of the window. */
export interface Place {
  readonly location: Pick<Location, 'hash' | 'pathname' | 'search'>;
  readonly history: Pick<History, 'replaceState' | 'state'>;
  readonly sessionStorage: Pick<Storage, 'getItem' | 'setItem'>;
}

/**
 * The entry key behind `#`, or null. It leaves the address at once, so that no
 * history, bookmark or screen keeps it, and with it what made the address new.
 */
export function takeEntryKey({ location, history }: Place): string | null {
  const { hash, pathname, search } = location;
  if (hash === '') return null;
  const asked = new URLSearchParams(search);
  asked.delete(VISIT);
  history.replaceState(history.state, '', asked.size === 0 ? pathname : `${pathname}?${asked}`);
  const key = hash.slice(1);
  return isSecret(key) ? key : null;
}

const NAME = 'walewright-run';

/** The run's key, kept so that the page can be loaded again; of no worth when the host has ended. */
export function keptRunKey(place: Place): string | null {
  try {
    const key = place.sessionStorage.getItem(NAME);
    return key !== null && isSecret(key) ? key : null;
  } catch {
    // Browsers can be told to keep nothing.
    return null;
  }
}

export function keepRunKey(place: Place, key: string): void {
  try {
    place.sessionStorage.setItem(NAME, key);
  } catch {
    // The window then goes on until it is loaded again.
  }
}
