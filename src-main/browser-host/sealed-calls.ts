/** Sealed calls: opened, carried out once, and answered so that only who asked can read it. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Services } from '@shared/host/index.ts';
import {
  about,
  bodyOf,
  HERE,
  isJoining,
  isProof,
  newSecret,
  open,
  seal,
  sealingKeys,
  type Bytes,
  type CallHead,
  type Joined,
  type Joining,
  type SealingKeys,
} from '@shared/host/sealed/index.ts';
import type { Outcome, Problem } from '@shared/problem/index.ts';
import { dispatch } from '../services/index.ts';
import type { Admission } from './admission.ts';
import { refuse, sendSealed } from './answer.ts';
import type { Entries } from './entries.ts';
import { announcedCall, type Refusal } from './guard.ts';
import { Windows } from './windows.ts';

export interface SealedCallsOptions {
  readonly storageKey: string;
  readonly entries: Entries;
  readonly admission: Admission;
  /** The services as this window has them. */
  servicesFor(window: string): Services;
  /** Told when a key that was spent comes again: two have had it. */
  onUsedTwice(): void;
}

export interface SealedCalls {
  /**
   * Answers a call of `method` to `authority`, which is what we listen on, such
   * as `127.0.0.1:4000`; `whenWhole` is told once all of it has come.
   */
  answer(
    authority: string,
    method: string,
    request: IncomingMessage,
    response: ServerResponse,
    whenWhole: () => void,
  ): Promise<void>;
}

/** Says no more: neither whether the key was wrong, nor the call known. */
const NOT_OURS: Refusal = { status: 403, detail: 'it is not sealed by a window of this program, or it came before' };

export async function sealedCalls(options: SealedCallsOptions): Promise<SealedCalls> {
  const { storageKey, entries, admission } = options;
  const { crypto } = globalThis;
  const runKey = newSecret(crypto);
  const run = await sealingKeys(crypto, runKey, 'run');
  const rejoining = await sealingKeys(crypto, storageKey, 'rejoining');
  const windows = new Windows();
  const joined: Joined = { runKey, storageKey };

  async function sendOutcome(
    response: ServerResponse,
    { toPage }: SealingKeys,
    head: CallHead,
    outcome: Outcome<unknown>,
  ): Promise<void> {
    const bytes = bodyOf(outcome, (text) => new TextEncoder().encode(text));
    sendSealed(response, await seal(crypto, toPage, about.answer(head), bytes));
  }

  /** The keys that a call to join is sealed with, or null. */
  async function keysOfJoining(way: Joining, head: CallHead, body: Bytes): Promise<SealingKeys | null> {
    if (way === 'enter') {
      const spent = await entries.spend(head, body);
      if (spent === 'again') options.onUsedTwice();
      return spent === 'again' ? null : spent;
    }
    const keys = way === 'join' ? run : rejoining;
    return (await open(crypto, keys.toHost, about.call(head), body)) === null ? null : keys;
  }

  async function letIn(way: Joining, head: CallHead, body: Bytes, response: ServerResponse): Promise<void> {
    const keys = await keysOfJoining(way, head, body);
    if (keys === null || !windows.letIn(head.window, head.count)) return refuse(response, NOT_OURS);
    return sendOutcome(response, keys, head, { ok: true, value: joined });
  }

  async function isFromWindow(head: CallHead, proof: string): Promise<boolean> {
    return windows.isFresh(head.window, head.count) && (await isProof(crypto, run.toHost, about.head(head), proof));
  }

  async function carryOut(head: CallHead, body: Bytes, response: ServerResponse): Promise<void> {
    const opened = await open(crypto, run.toHost, about.call(head), body);
    if (opened === null || !windows.take(head.window, head.count)) return refuse(response, NOT_OURS);
    return sendOutcome(response, run, head, await outcomeOf(head, opened));
  }

  async function outcomeOf({ window, method }: CallHead, opened: Bytes): Promise<Outcome<unknown>> {
    if (method === HERE) return { ok: true, value: {} };
    let params: unknown;
    try {
      params = JSON.parse(new TextDecoder().decode(opened));
    } catch {
      return problem({ code: 'request-invalid', where: null, facts: { method, wrong: 'not-json' } });
    }
    return dispatch(options.servicesFor(window), method, params);
  }

  return {
    async answer(authority, method, request, response, whenWhole) {
      const announced = announcedCall(request, authority, method);
      if ('status' in announced) return refuse(response, announced);
      const { head, proof, length } = announced;
      // Before room is made for it. A call to join is small, and shows what it is by opening.
      if (!isJoining(method) && !(await isFromWindow(head, proof))) return refuse(response, NOT_OURS);
      const gone = new AbortController();
      request.once('close', () => gone.abort());
      const giveBack = await admission.room(length, gone.signal);
      if (giveBack === null) {
        return sendOutcome(response, run, head, problem({ code: 'host-busy', where: null, facts: {} }));
      }
      try {
        const body = await wholeBody(request, length);
        whenWhole();
        await (isJoining(method) ? letIn(method, head, body, response) : carryOut(head, body, response));
      } finally {
        giveBack();
      }
    },
  };
}

function problem(what: Problem): Outcome<never> {
  return { ok: false, problem: what };
}

/** The body, `length` bytes; rejects if it ends before, or its sender is gone. Node lets none be longer. */
async function wholeBody(request: IncomingMessage, length: number): Promise<Uint8Array<ArrayBuffer>> {
  const body = new Uint8Array(length);
  let at = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    body.set(chunk, at);
    at += chunk.length;
  }
  if (at < length) throw new Error('The body ended early');
  return body;
}
