/**
 * Which window this is, so that each keeps its own work.
 *
 * The id lies in `sessionStorage`: a window that is loaded again finds its own.
 * A tab that was duplicated finds the id of the tab it was copied from; that one
 * still holds the lock on it, and so the copy knows to take another. The same
 * locks tell which windows of this browser are open.
 */
const WINDOW = 'walewright-window';
const BROWSER = 'walewright-browser';
const LOCK = 'walewright-window ';

/** How long the page before this one may take to let its lock go when a window is loaded again. */
const PATIENCE_MS = 1000;

export interface WindowIdentity {
  readonly window: string;
  /** The same for all windows of this browser on this address. */
  readonly browser: string;
  /** Windows of this browser that are open now, this one too. */
  open(): Promise<string[]>;
}

/** What is needed of a browser's storages and locks. */
export interface IdentityPlaces {
  readonly session: Pick<Storage, 'getItem' | 'setItem'> | null;
  readonly local: Pick<Storage, 'getItem' | 'setItem'> | null;
  readonly locks: Pick<LockManager, 'request' | 'query'> | null;
  newId(): string;
}

/** Never rejects: without storage or locks the window is one by itself, that no other takes work from. */
export async function windowIdentity({ session, local, locks, newId }: IdentityPlaces): Promise<WindowIdentity> {
  const alone = newId();
  if (locks === null) return { window: alone, browser: newId(), open: async () => [alone] };
  const before = validId(session?.getItem(WINDOW));
  const window = before !== null && (await holds(locks, before)) ? before : newId();
  if (window !== before) await holds(locks, window);
  session?.setItem(WINDOW, window);
  const browser = validId(local?.getItem(BROWSER)) ?? newId();
  local?.setItem(BROWSER, browser);
  return {
    window,
    browser,
    async open() {
      const { held = [] } = await locks.query();
      const names = held.flatMap(({ name }) => (name?.startsWith(LOCK) ? [name.slice(LOCK.length)] : []));
      return [...new Set([window, ...names])];
    },
  };
}

/** What this browser has; a browser may deny storage, and then throws at the mere look. */
export function browserPlaces(): IdentityPlaces {
  const allowed = <T>(look: () => T): T | null => {
    try {
      return look();
    } catch {
      return null;
    }
  };
  return {
    session: allowed(() => sessionStorage),
    local: allowed(() => localStorage),
    locks: (navigator as { locks?: LockManager }).locks ?? null,
    newId: () => crypto.randomUUID(),
  };
}

/** Holds the lock of `window` for as long as the page lives; false if another page holds it. */
function holds(locks: Pick<LockManager, 'request'>, window: string): Promise<boolean> {
  return new Promise((resolve) => {
    locks
      .request(LOCK + window, { signal: AbortSignal.timeout(PATIENCE_MS) }, () => {
        resolve(true);
        return new Promise(() => undefined);
      })
      .catch(() => resolve(false));
  });
}

function validId(text: string | null | undefined): string | null {
  return text !== null && text !== undefined && /^[a-z0-9-]{8,64}$/.test(text) ? text : null;
}
