/** What a request must show before anything is done for it. */
import type { IncomingMessage } from 'node:http';
import type { Keys } from './keys.ts';

export interface Refusal {
  readonly status: 400 | 403 | 405 | 413 | 415;
  readonly detail: string;
}

/** Cookies know no ports, so each host has a name of its own. */
export function cookieName(port: number): string {
  return `walewright-${port}`;
}

/** Null if the request may go on. `authority` is what we listen on, such as `127.0.0.1:4000`. */
export function refusalOf(request: IncomingMessage, authority: string, port: number, keys: Keys): Refusal | null {
  const wrongHost = refusalOfHost(request, authority);
  if (wrongHost) return wrongHost;
  if (!keys.isAdmitted(cookieOf(request, cookieName(port)) ?? '')) return { status: 403, detail: 'it carries no key' };
  if (request.method !== 'POST') return null;
  // Browsers name the page that asks; only ours may.
  if (request.headers.origin !== `http://${authority}`) return { status: 403, detail: 'it comes from another page' };
  // A form of another page can send plain text without asking first, but not this.
  if (!/^application\/json(?:;|$)/.test(request.headers['content-type'] ?? '')) {
    return { status: 415, detail: 'it is not JSON' };
  }
  return null;
}

/** A name that was made to point here after the page was loaded shows in the Host header. */
export function refusalOfHost(request: IncomingMessage, authority: string): Refusal | null {
  return request.headers.host === authority ? null : { status: 403, detail: 'it names another host' };
}

function cookieOf(request: IncomingMessage, name: string): string | null {
  for (const pair of (request.headers.cookie ?? '').split(';')) {
    const [key, value] = pair.trim().split('=', 2);
    if (key === name) return value ?? null;
  }
  return null;
}
