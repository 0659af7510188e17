/**
 * Where unsaved work is kept: with the host, and in the browser's own storage
 * while there is none. The host is given what changed since it last had the
 * work, and all of it where it asks for that; the storage holds all of it. Work
 * that lies in the storage is handed to the host as soon as one is there.
 */
import type { Host, Params, Result } from '@shared/host/index.ts';
import { problemOf, type Outcome } from '@shared/problem/index.ts';
import type { StoredName, StoredWork, WorkToKeep } from './stored-work.ts';

/** Work as it is now: what changed of it since it was last kept, where that is known, and all of it. */
export interface WorkNow extends StoredName {
  /** Follows the edition before; null: that one may not be kept anywhere. */
  readonly since: Params<'recovery.append'> | null;
  whole(): WorkToKeep;
  /** All of it with names for its pictures, and the pictures by their hashes; left out: it has none. `since` names them too. */
  readonly apart?: { readonly pictures: ReadonlyMap<string, string>; whole(): WorkToKeep };
}

export interface KeepingPlace {
  /** The hash under which a picture is held for work that names it; null: it is nowhere held. */
  give(picture: Params<'recovery.picture'>): Promise<string | null>;
  keep(work: WorkNow): Promise<Outcome<unknown>>;
  drop(work: Params<'recovery.drop'>): Promise<Outcome<unknown>>;
}

const DONE: Outcome<unknown> = { ok: true, value: {} };

/** Keeps with the host alone; for shells whose services live as long as the window. */
export function hostPlace(host: Pick<Host, 'call'>): KeepingPlace {
  return {
    async give(picture) {
      const given = await host.call('recovery.picture', picture);
      return given.ok ? given.value.hash : null;
    },
    async keep({ window, since, whole, apart }) {
      if (since !== null) {
        const behind = await host.call('recovery.append', since);
        if (!behind.ok || behind.value.isKept) return behind;
      }
      if (!apart) return host.call('recovery.keep', whole());
      const named = apart.whole();
      const first = await host.call('recovery.keep', named);
      const missing = missingIn(first);
      if (missing.length === 0) return first;
      for (const hash of missing) {
        const picture = apart.pictures.get(hash);
        if (picture === undefined) continue;
        const taken = await host.call('recovery.picture', { window, picture });
        if (!taken.ok) return taken;
      }
      const second = await host.call('recovery.keep', named);
      // It holds only so many, for all windows.
      return missingIn(second).length === 0 ? second : host.call('recovery.keep', whole());
    },
    drop: (work) => host.call('recovery.drop', work),
  };
}

function missingIn(kept: Outcome<Result<'recovery.keep'>>): readonly string[] {
  return (kept.ok && kept.value.missing) || [];
}

/** Keeps with the host, and while it cannot be reached in the storage. */
export function hostOrStorage(host: Pick<Host, 'call'>, stored: StoredWork): KeepingPlace {
  const withHost = hostPlace(host);
  return {
    give: (picture) => withHost.give(picture),
    async keep(work) {
      const kept = await withHost.keep(work);
      if (kept.ok) {
        // What stays there is an earlier edition, which no host takes for a later one.
        await settled(stored.drop(work));
        return kept;
      }
      if (kept.problem.code !== 'host-unreachable') return kept;
      return (await settled(stored.keep(work.whole()))) ?? DONE;
    },
    async drop(work) {
      const failure = await settled(stored.drop(work));
      const dropped = await withHost.drop(work);
      return dropped.ok ? (failure ?? dropped) : dropped;
    },
  };
}

export interface HandedOver {
  /** The works that the host has now. */
  readonly works: readonly string[];
  /** True if something stays: it does not open, or the host does not take it. */
  readonly isSomeLeft: boolean;
}

/** Hands the host what lies in the storage, but for windows that are open and do so themselves. */
export async function handOver(
  host: Pick<Host, 'call'>,
  stored: StoredWork,
  isOpenElsewhere: (window: string) => boolean,
): Promise<HandedOver> {
  const works: string[] = [];
  let isSomeLeft = false;
  for (const name of await stored.names()) {
    if (isOpenElsewhere(name.window)) continue;
    if (await handOverOne(host, stored, name)) works.push(name.work);
    else isSomeLeft = true;
  }
  return { works, isSomeLeft };
}

async function handOverOne(host: Pick<Host, 'call'>, stored: StoredWork, name: StoredName): Promise<boolean> {
  const work = await stored.read(name);
  if (work === null) return false;
  const kept = await host.call('recovery.keep', work);
  if (!kept.ok) return false;
  await stored.drop(name);
  return true;
}

/** Null if it went well. */
function settled(done: Promise<void>): Promise<Outcome<never> | null> {
  return done.then(
    () => null,
    (thrown: unknown) => ({ ok: false, problem: problemOf(thrown) }),
  );
}
