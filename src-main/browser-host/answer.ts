/** Writing answers. */
import type { ServerResponse } from 'node:http';
import type { Outcome, Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { GUARD_HEADERS, type PageAnswer } from '../services/index.ts';
import type { Refusal } from './guard.ts';

export function sendOutcome(response: ServerResponse, status: number, outcome: Outcome<unknown>): void {
  response.writeHead(status, {
    ...GUARD_HEADERS,
    'content-type': 'application/json',
    'cache-control': 'no-store',
  });
  response.end(JSON.stringify(outcome));
}

export function sendPage(response: ServerResponse, { status, headers, body }: PageAnswer): void {
  response.writeHead(status, { ...headers, 'content-length': body.length });
  // Node leaves the body out by itself where only the head was asked for.
  response.end(body);
}

/** A call is refused as an outcome, an address in words. */
export function refuse(response: ServerResponse, isCall: boolean, { status, detail }: Refusal): void {
  const problem: Problem = { code: 'request-refused', where: null, facts: { detail } };
  // What has not been read of the body is not wanted any more.
  response.setHeader('connection', 'close');
  if (isCall) return sendOutcome(response, status, { ok: false, problem });
  response.writeHead(status, {
    ...GUARD_HEADERS,
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
  });
  response.end(`${words.problems.sentence(problem)}\n`);
}
