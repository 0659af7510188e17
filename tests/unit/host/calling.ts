/** A window without a page: calls sealed as the page seals them, and each part of them to be spoilt. */
import {
  about,
  CALL_HEADER,
  CALL_PATH,
  headerText,
  joinedFrom,
  newSecret,
  open,
  proofOf,
  readBody,
  seal,
  sealingKeys,
  type CallHead,
  type Joined,
  type SealingKeys,
  type SealUse,
} from '@shared/host/sealed/index.ts';
import { ask, type Answer, type Asked } from './asking.ts';

const { crypto } = globalThis;

export interface Caller extends Joined {
  readonly origin: string;
  readonly window: string;
  readonly keys: SealingKeys;
  /** What stands over the next call of `method`. */
  head(method: string): CallHead;
}

/** A request for what stands in `head`, sealed with `keys`. */
export async function sealedRequest(
  origin: string,
  keys: SealingKeys,
  head: CallHead,
  params: unknown = {},
): Promise<Asked & { readonly body: Uint8Array<ArrayBuffer> }> {
  const body = await seal(crypto, keys.toHost, about.call(head), new TextEncoder().encode(JSON.stringify(params)));
  return {
    method: 'POST',
    path: CALL_PATH + head.method,
    headers: { origin, [CALL_HEADER]: await headerFor(keys, head), 'content-length': String(body.length) },
    body,
  };
}

/** What stands over a call, with the proof of who holds `keys`. */
export async function headerFor(keys: SealingKeys, head: CallHead): Promise<string> {
  return headerText({ head, proof: await proofOf(crypto, keys.toHost, about.head(head)) });
}

/** The outcome in an answer, or null if it is not sealed for that call. */
export async function openedAnswer(keys: SealingKeys, head: CallHead, { bytes }: Answer): Promise<unknown> {
  const opened = await open(crypto, keys.toPage, about.answer(head), bytes);
  return opened === null ? null : readBody(opened, (text) => new TextDecoder().decode(text)).value;
}

/** A call to join: how it was answered, and who may call if it was let in. */
export async function join(
  origin: string,
  way: 'enter' | 'join' | 'rejoin',
  secret: string,
  head: Partial<CallHead> = {},
): Promise<{ readonly answer: Answer; readonly caller: Caller | null }> {
  const use: Record<typeof way, SealUse> = { enter: 'entry', join: 'run', rejoin: 'rejoining' };
  const keys = await sealingKeys(crypto, secret, use[way]);
  const { host: authority } = new URL(origin);
  const first = { authority, window: newSecret(crypto), count: 1, method: way, ...head };
  const answer = await ask(origin, await sealedRequest(origin, keys, first));
  const outcome = await openedAnswer(keys, first, answer);
  if (outcome === null) return { answer, caller: null };
  const joined = joinedFrom((outcome as { value: unknown }).value);
  if (joined === null) throw new Error('The host lets in, and does not say with which keys');
  const run = await sealingKeys(crypto, joined.runKey, 'run');
  let { count } = first;
  const caller: Caller = {
    ...joined,
    origin,
    window: first.window,
    keys: run,
    head: (method) => ({ authority, window: first.window, count: ++count, method }),
  };
  return { answer, caller };
}

/** A caller that has come in by an address of the host. */
export async function comeIn(address: string): Promise<Caller> {
  const { origin, hash } = new URL(address);
  const { caller } = await join(origin, 'enter', hash.slice(1));
  if (caller === null) throw new Error('The host let nobody in');
  return caller;
}

/** Calls as the page does; null for an answer that does not open. */
export async function callAs(caller: Caller, method: string, params: unknown = {}): Promise<unknown> {
  const head = caller.head(method);
  const answer = await ask(caller.origin, await sealedRequest(caller.origin, caller.keys, head, params));
  return openedAnswer(caller.keys, head, answer);
}
