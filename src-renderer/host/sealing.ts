/** Sealing what is said to the host and opening what it says; what is large, in a worker. */
import { readBody, type ReadBody } from '@shared/host/sealed/body.ts';
import { open, seal, type Bytes, type SealingKey } from '@shared/host/sealed/seal.ts';

export interface Sealing {
  /** The value as JSON, sealed. */
  seal(key: SealingKey, about: string, value: unknown): Promise<Bytes>;
  /** The same, to be sent: what is large as a blob, which the page can send without taking hold of the bytes. */
  sealToSend(key: SealingKey, about: string, value: unknown): Promise<Bytes | Blob>;
  /**
   * The value that was sealed as a body, or null if this was not sealed with that
   * key about that. `sealed` is handed over: it is not to be used again.
   */
  open(key: SealingKey, about: string, sealed: Bytes): Promise<ReadBody | null>;
}

export const sealingHere: Sealing = {
  seal: (key, about, value) => seal(globalThis.crypto, key, about, new TextEncoder().encode(JSON.stringify(value))),
  sealToSend: (key, about, value) => sealingHere.seal(key, about, value),
  async open(key, about, sealed) {
    const opening = open(globalThis.crypto, key, about, sealed);
    // WebCrypto has taken a copy by now.
    release(sealed);
    const bytes = await opening;
    if (bytes === null) return null;
    try {
      return readBody(bytes, (text) => new TextDecoder().decode(text));
    } catch {
      return null;
    }
  },
};

/** Gives the memory of bytes back at once, where the platform can (ES2024), and not when it next looks for what nobody uses. */
export function release({ buffer }: Bytes): void {
  (buffer as { transfer?: (length: number) => unknown }).transfer?.(0);
}

/** From so many letters or bytes on, the page would be seen to wait. */
const LARGE = 500_000;

export type SealingQuestion =
  /** Whether it is there. */
  | { readonly id: number; readonly do: 'answer' }
  | {
      readonly id: number;
      /** With `send` as a blob. */
      readonly do: 'seal' | 'send';
      readonly key: SealingKey;
      readonly about: string;
      readonly value: unknown;
    }
  | {
      readonly id: number;
      readonly do: 'open';
      readonly key: SealingKey;
      readonly about: string;
      readonly sealed: Bytes;
    };

export interface SealingAnswer {
  readonly id: number;
  /** What {@link sealingHere} gave, or null if it threw; true for a helper that is there. */
  readonly done: unknown;
}

/** What is needed of a `Worker`. */
export interface SealingHelper {
  postMessage(question: SealingQuestion, transfer: Transferable[]): void;
  onmessage: ((event: MessageEvent<SealingAnswer>) => unknown) | null;
  onerror: ((event: ErrorEvent) => unknown) | null;
}

type Asked = SealingQuestion extends infer Q ? (Q extends unknown ? Omit<Q, 'id'> : never) : never;

/** Large ones by a helper that `start` makes; by the page itself where there is none. */
export function sealingInWorker(start: () => SealingHelper): Sealing {
  const waiting = new Map<number, (done: unknown) => void>();
  let helper: SealingHelper | null | undefined;
  let count = 0;

  function begin(): SealingHelper | null {
    try {
      const made = start();
      made.onmessage = ({ data: { id, done } }) => {
        waiting.get(id)?.(done);
        waiting.delete(id);
      };
      made.onerror = () => {
        helper = null;
        for (const answer of waiting.values()) answer(null);
        waiting.clear();
      };
      return made;
    } catch {
      return null;
    }
  }

  /** Null if there is no helper, or it failed. */
  function ask(question: Asked, transfer: Transferable[] = []): Promise<unknown> {
    helper ??= helper === undefined ? begin() : null;
    const asked = helper;
    if (asked === null) return Promise.resolve(null);
    const id = count++;
    return new Promise((resolve) => {
      waiting.set(id, resolve);
      asked.postMessage({ ...question, id } as SealingQuestion, transfer);
    });
  }

  return {
    async seal(key, about, value) {
      const done = isLarge(value) ? await ask({ do: 'seal', key, about, value }) : null;
      return done === null ? sealingHere.seal(key, about, value) : (done as Bytes);
    },
    async sealToSend(key, about, value) {
      const done = isLarge(value) ? await ask({ do: 'send', key, about, value }) : null;
      return done === null ? sealingHere.seal(key, about, value) : (done as Blob);
    },
    async open(key, about, sealed) {
      // The bytes go over and are not copied, so only to a helper that is there: from another they would not come back.
      const isHelped = sealed.length > LARGE && (await ask({ do: 'answer' })) === true;
      if (!isHelped) return sealingHere.open(key, about, sealed);
      return (await ask({ do: 'open', key, about, sealed }, [sealed.buffer])) as ReadBody | null;
    },
  };
}

/** Nothing in the contract is large but by the length of a text in it. */
function isLarge(value: unknown): boolean {
  if (typeof value === 'string') return value.length > LARGE;
  return typeof value === 'object' && value !== null && Object.values(value).some(isLarge);
}
