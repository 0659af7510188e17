/**
 * Calls to the browser host, sealed.
 *
 * What answers on the host's port need not be the host: it may have ended, and
 * another program have its port. An answer that does not open says so, and then
 * nothing goes there but a request to join again, sealed with a key that every
 * host of this user knows and nobody else. A host that takes long is not gone,
 * and no call is given up for taking long; only the small question whether it
 * is there must be answered in a while, for a stranger may just keep silent.
 */
import type { Host, Method, Params, Result } from '@shared/host/index.ts';
import {
  about,
  CALL_HEADER,
  CALL_PATH,
  headerText,
  HERE,
  joinedFrom,
  MOST_CALL_BYTES,
  newSecret,
  proofOf,
  sealingKeys,
  type CallHead,
  type Joined,
  type Joining,
  type SealingKeys,
} from '@shared/host/sealed/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { type Connection, type Standing, type StorageSeal, isOutcome, tooLarge, UNREACHABLE } from './connection.ts';
import { release, type Sealing } from './sealing.ts';

export type Fetch = (path: string, request: RequestInit) => Promise<Response>;

/** What the connection has of the page. */
export interface Surroundings {
  /** `127.0.0.1:4000` */
  readonly authority: string;
  readonly fetch: Fetch;
  readonly sealing: Sealing;
  /** Told of the key of every host that is joined. */
  keepRunKey(key: string): void;
  /** Resolves when it is time to look whether the host is there. */
  nextLook(isJoined: boolean): Promise<void>;
  /** Aborts when a host that is there would have said so. */
  patience(): AbortSignal;
}

interface Keys {
  readonly run: SealingKeys;
  readonly rejoining: SealingKeys;
  readonly storage: SealingKeys;
}

/** What stands at the other end of a call: our host, with its outcome; somebody who cannot open what we seal; nobody. */
type Answered = { readonly by: 'host'; readonly outcome: Outcome<unknown> } | { readonly by: 'stranger' | 'nobody' };

export class SealedConnection implements Connection {
  readonly host: Host;
  readonly storage: StorageSeal;
  #isJoined = true;
  #looking: Promise<boolean> | null = null;
  /** Aborted when the host is gone: what is still asked of it will not be answered. */
  #gone = new AbortController();
  readonly #listeners = new Set<(standing: Standing) => void>();

  private constructor(
    private readonly surroundings: Surroundings,
    private readonly line: Line,
    private keys: Keys,
  ) {
    this.host = { call: (method, params) => this.#call(method, params), listen: () => () => undefined };
    this.storage = this.#storageSeal();
    void this.#watch();
  }

  /** Joins with an entry key (`enter`) or the run's (`join`); a word for why not. */
  static async open(
    surroundings: Surroundings,
    way: Exclude<Joining, 'rejoin'>,
    secret: string,
  ): Promise<SealedConnection | 'refused' | 'nobody'> {
    const line = new Line(surroundings);
    const keys = await sealingKeys(globalThis.crypto, secret, way === 'enter' ? 'entry' : 'run');
    const joined = joinedIn(await line.ask(keys, way, {}, surroundings.patience()));
    if (joined === 'stranger') return 'refused';
    if (joined === 'nobody') return 'nobody';
    surroundings.keepRunKey(joined.runKey);
    return new SealedConnection(surroundings, line, await keysOf(joined));
  }

  get isJoined(): boolean {
    return this.#isJoined;
  }

  onStanding(listener: (standing: Standing) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  look(): Promise<boolean> {
    // One at a time: who asks while one is on its way wants its answer.
    this.#looking ??= this.#look().finally(() => (this.#looking = null));
    return this.#looking;
  }

  async #call<M extends Method>(method: M, params: Params<M>): Promise<Outcome<Result<M>>> {
    return (await this.#ask(method, params)) as Outcome<Result<M>>;
  }

  async #ask(method: string, params: unknown): Promise<Outcome<unknown>> {
    if (!this.#isJoined) return UNREACHABLE;
    const { run } = this.keys;
    const gone = this.#gone.signal;
    const answered = await this.line.ask(run, method, params, gone);
    if (answered.by === 'host') return answered.outcome;
    if (gone.aborted) return UNREACHABLE;
    if (answered.by === 'stranger' || !(await this.#isHere())) this.#lose(run);
    return UNREACHABLE;
  }

  async #look(): Promise<boolean> {
    if (!this.#isJoined) await this.#rejoin();
    else {
      const { run } = this.keys;
      if (!(await this.#isHere())) this.#lose(run);
    }
    return this.#isJoined;
  }

  /**
   * Whether our host answers. Where nobody does it is asked once more: on a
   * computer with all its cores busy, or one that has slept, an answer may come
   * too late or its way be cut, and the host is there all the same.
   */
  async #isHere(): Promise<boolean> {
    const { run } = this.keys;
    const gone = this.#gone.signal;
    const ask = (): Promise<Answered> =>
      this.line.ask(run, HERE, {}, AbortSignal.any([gone, this.surroundings.patience()]));
    let answered = await ask();
    if (answered.by === 'nobody' && !gone.aborted) answered = await ask();
    return answered.by === 'host';
  }

  /** Another call may have found the next host in the meantime. */
  #lose(run: SealingKeys): void {
    if (run === this.keys.run) this.#stand(false);
  }

  async #rejoin(): Promise<void> {
    const { patience, keepRunKey } = this.surroundings;
    const joined = joinedIn(await this.line.ask(this.keys.rejoining, 'rejoin', {}, patience()));
    if (typeof joined === 'string') return;
    this.keys = await keysOf(joined);
    keepRunKey(joined.runKey);
    this.#stand(true);
  }

  #stand(isJoined: boolean): void {
    if (this.#isJoined === isJoined) return;
    this.#isJoined = isJoined;
    if (!isJoined) {
      this.#gone.abort();
      this.#gone = new AbortController();
    }
    for (const listener of this.#listeners) listener(isJoined ? 'rejoined' : 'lost');
  }

  async #watch(): Promise<never> {
    for (;;) {
      await this.surroundings.nextLook(this.#isJoined);
      await this.look();
    }
  }

  #storageSeal(): StorageSeal {
    const { sealing } = this.surroundings;
    return {
      sealForStorage: (name, text) => sealing.seal(this.keys.storage.toPage, name, text),
      openFromStorage: async (name, sealed) => {
        const opened = await sealing.open(this.keys.storage.toPage, name, sealed);
        return typeof opened?.value === 'string' ? opened.value : null;
      },
    };
  }
}

async function keysOf({ runKey, storageKey }: Joined): Promise<Keys> {
  const [run, rejoining, storage] = await Promise.all([
    sealingKeys(globalThis.crypto, runKey, 'run'),
    sealingKeys(globalThis.crypto, storageKey, 'rejoining'),
    sealingKeys(globalThis.crypto, storageKey, 'storage'),
  ]);
  return { run, rejoining, storage };
}

function joinedIn(answered: Answered): Joined | 'stranger' | 'nobody' {
  if (answered.by !== 'host') return answered.by;
  return (answered.outcome.ok && joinedFrom(answered.outcome.value)) || 'stranger';
}

/** The calls of one page, counted. */
class Line {
  /** Another for every page that is loaded: a host refuses a count that it has seen from a window. */
  readonly #window = newSecret(globalThis.crypto);
  #count = 0;

  constructor(private readonly surroundings: Surroundings) {}

  async ask(keys: SealingKeys, method: string, params: unknown, signal: AbortSignal): Promise<Answered> {
    const { authority, sealing, fetch } = this.surroundings;
    const head: CallHead = { authority, window: this.#window, count: ++this.#count, method };
    const body = await sealing.sealToSend(keys.toHost, about.call(head), params);
    const proof = await proofOf(globalThis.crypto, keys.toHost, about.head(head));
    const length = body instanceof Blob ? body.size : body.length;
    if (length > MOST_CALL_BYTES) return { by: 'host', outcome: tooLarge(length) };
    try {
      const response = await fetch(CALL_PATH + method, {
        method: 'POST',
        headers: { [CALL_HEADER]: headerText({ head, proof }) },
        body,
        cache: 'no-store',
        // To follow it would send the call somewhere else.
        redirect: 'error',
        signal,
      });
      const answer = await bytesOf(response);
      const opened = answer && (await sealing.open(keys.toPage, about.answer(head), answer));
      return opened !== null && isOutcome(opened.value) ? { by: 'host', outcome: opened.value } : { by: 'stranger' };
    } catch {
      return { by: 'nobody' };
    }
  }
}

/**
 * What a response brings, in one buffer of the length that it states: the
 * browser's own reading holds the pieces and the whole for a moment, which is
 * twice as much. Null where it states no length or more than a host ever
 * sends, and where it brings another number of bytes than it says: a stranger
 * may send without end, or little that unpacks to much.
 */
async function bytesOf(response: Response): Promise<Uint8Array<ArrayBuffer> | null> {
  const length = Number(response.headers.get('content-length') ?? NaN);
  const reader = response.body?.getReader();
  if (!reader) return null;
  try {
    if (!(length <= MOST_CALL_BYTES)) return null;
    const bytes = new Uint8Array(length);
    let at = 0;
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return at === length ? bytes : null;
      if (at + value.length > length) return null;
      bytes.set(value, at);
      at += value.length;
      release(value);
    }
  } finally {
    // What has not come is not wanted.
    void reader.cancel().catch(() => undefined);
  }
}
