/**
 * Work kept in the browser's own storage while no host can be reached.
 *
 * It lies there sealed, each work of each window under its own name: whoever
 * has the host's address next can neither read it nor put other work in its
 * place. What does not open is left as it is.
 */
import type { Params } from '@shared/host/index.ts';
import { outcome } from '@shared/problem/index.ts';

export type WorkToKeep = Params<'recovery.keep'>;

/** What seals for the browser's storage, and opens. */
export interface Seal {
  sealForStorage(name: string, text: string): Promise<Uint8Array<ArrayBuffer>>;
  openFromStorage(name: string, sealed: Uint8Array<ArrayBuffer>): Promise<string | null>;
}

export interface StoredName {
  readonly window: string;
  readonly work: string;
}

export interface StoredWork {
  /** Resolves when it is on the disk. */
  keep(work: WorkToKeep): Promise<void>;
  /** Also resolves where the browser lets nothing be stored: then nothing lies there. */
  drop(name: StoredName): Promise<void>;
  /** Whose work lies there. */
  names(): Promise<readonly StoredName[]>;
  /** Null: it is gone, or was not sealed by a window of this user. */
  read(name: StoredName): Promise<WorkToKeep | null>;
}

const DATABASE = 'walewright';
const STORE = 'kept-work';

export function storedWork(factory: IDBFactory, seal: Seal): StoredWork {
  let opened: Promise<IDBDatabase> | null = null;
  const database = async (): Promise<IDBDatabase> =>
    (opened ??= openDatabase(factory).catch((error: unknown) => {
      opened = null;
      throw error;
    }));

  async function change(there: IDBDatabase, edit: (store: IDBObjectStore) => IDBRequest): Promise<void> {
    // Strict: done when it is on the disk, and not on its way there (Indexed Database API 3.0, 2.7.1).
    const transaction = there.transaction(STORE, 'readwrite', { durability: 'strict' });
    edit(transaction.objectStore(STORE));
    await new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error('The storage gave up'));
    });
  }

  async function read<T>(ask: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
    return answerOf(ask((await database()).transaction(STORE).objectStore(STORE)));
  }

  return {
    async keep(work) {
      const key = keyOf(work);
      const sealed = await seal.sealForStorage(key, JSON.stringify(work));
      await change(await database(), (store) => store.put(sealed, key));
    },
    async drop(name) {
      const there = await database().catch(() => null);
      if (there) await change(there, (store) => store.delete(keyOf(name)));
    },
    async names() {
      return (await read((store) => store.getAllKeys())).flatMap((key) => nameFrom(key) ?? []);
    },
    async read(name) {
      const sealed: unknown = await read((store) => store.get(keyOf(name)));
      if (!(sealed instanceof Uint8Array)) return null;
      const text = await seal.openFromStorage(keyOf(name), sealed as Uint8Array<ArrayBuffer>);
      const work = text === null ? null : outcome(() => JSON.parse(text) as WorkToKeep);
      return work?.ok ? work.value : null;
    },
  };
}

function keyOf({ window, work }: StoredName): string {
  return `kept ${window} ${work}`;
}

function nameFrom(key: IDBValidKey): StoredName | null {
  const [, window, work] = (typeof key === 'string' && /^kept (\S+) (\S+)$/.exec(key)) || [];
  return window === undefined || work === undefined ? null : { window, work };
}

function openDatabase(factory: IDBFactory): Promise<IDBDatabase> {
  const request = factory.open(DATABASE, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return answerOf(request);
}

function answerOf<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The storage gave up'));
  });
}
