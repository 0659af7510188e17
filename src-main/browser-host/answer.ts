/** Writing answers. */
import type { ServerResponse } from 'node:http';
import type { Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { GUARD_HEADERS, type PageAnswer } from '../services/index.ts';
import type { Refusal } from './guard.ts';

/** What only the window that asked can open. */
export function sendSealed(response: ServerResponse, sealed: Uint8Array): void {
  response.writeHead(200, {
    ...GUARD_HEADERS,
    'content-type': 'application/octet-stream',
    'content-length': sealed.length,
    'cache-control': 'no-store',
  });
  response.end(sealed);
}

export function sendPage(response: ServerResponse, { status, headers, body }: PageAnswer): void {
  response.writeHead(status, { ...headers, 'content-length': body.length });
  // Node leaves the body out by itself where only the head was asked for.
  response.end(body);
}

/** Says in words why nothing is done; to a window it means that this is not its host. */
export function refuse(response: ServerResponse, { status, detail }: Refusal): void {
  const problem: Problem = { code: 'request-refused', where: null, facts: { detail } };
  response.writeHead(status, {
    ...GUARD_HEADERS,
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
    // What has not been read of the body is not wanted any more.
    connection: 'close',
  });
  response.end(`${words.problems.sentence(problem)}\n`);
}
