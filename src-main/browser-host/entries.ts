/** Keys that let one window in, each once. */
import {
  about,
  newSecret,
  open,
  sealingKeys,
  type Bytes,
  type CallHead,
  type SealingKeys,
} from '@shared/host/sealed/index.ts';

interface Entry {
  readonly keys: SealingKeys;
  /** Told when the key is of no use any more. */
  readonly whenGone: () => void;
}

/** Spent keys that are still known, to notice who comes with one again. */
const MOST_SPENT = 32;

export class Entries {
  readonly #unspent = new Set<Entry>();
  #spent: SealingKeys[] = [];

  /** A new key, and what takes it back unspent. */
  async add(whenGone: () => void = () => undefined): Promise<{ key: string; takeBack: () => void }> {
    const key = newSecret(globalThis.crypto);
    const entry: Entry = { keys: await sealingKeys(globalThis.crypto, key, 'entry'), whenGone };
    this.#unspent.add(entry);
    return {
      key,
      takeBack: () => {
        if (this.#unspent.delete(entry)) entry.whenGone();
      },
    };
  }

  /** Spends the key that `body` is sealed with: its keys; `again` if it was spent before; null for no key of ours. */
  async spend(head: CallHead, body: Bytes): Promise<SealingKeys | 'again' | null> {
    const opens = async ({ toHost }: SealingKeys): Promise<boolean> =>
      (await open(globalThis.crypto, toHost, about.call(head), body)) !== null;
    for (const entry of [...this.#unspent]) {
      if (!(await opens(entry.keys))) continue;
      // Another may have been quicker while this was opened.
      if (!this.#unspent.delete(entry)) return 'again';
      this.#spent = [entry.keys, ...this.#spent].slice(0, MOST_SPENT);
      entry.whenGone();
      return entry.keys;
    }
    for (const keys of this.#spent) if (await opens(keys)) return 'again';
    return null;
  }

  /** Takes all back. */
  clear(): void {
    for (const { whenGone } of this.#unspent) whenGone();
    this.#unspent.clear();
  }
}
