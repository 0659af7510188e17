/** What a request must show before anything of it is read. */
import type { IncomingMessage } from 'node:http';
import {
  CALL_HEADER,
  headerFromText,
  isJoining,
  MOST_CALL_BYTES,
  MOST_JOINING_BYTES,
  type CallHeader,
} from '@shared/host/sealed/index.ts';

export interface Refusal {
  readonly status: 400 | 403 | 405 | 411 | 413;
  readonly detail: string;
}

/** A name that was made to point here after the page was loaded shows in the Host header. */
export function refusalOfHost(request: IncomingMessage, authority: string): Refusal | null {
  return request.headers.host === authority ? null : { status: 403, detail: 'it names another host' };
}

/** What a call says of itself, none of it believed before it is opened. */
export interface Announced extends CallHeader {
  /** Bytes of the body. */
  readonly length: number;
}

/** What the request announces, or why it is refused. `authority` is what we listen on, such as `127.0.0.1:4000`. */
export function announcedCall(request: IncomingMessage, authority: string, method: string): Announced | Refusal {
  // Browsers name the page that asks; only ours may.
  if (request.headers.origin !== `http://${authority}`) return { status: 403, detail: 'it comes from another page' };
  const said = request.headers[CALL_HEADER];
  const header = typeof said === 'string' ? headerFromText(said) : null;
  if (header === null) return { status: 403, detail: 'it is not sealed' };
  const { head } = header;
  if (head.authority !== authority || head.method !== method)
    return { status: 403, detail: 'it is sealed for another' };
  // Room is made for the whole of it before it comes.
  const length = Number(request.headers['content-length'] ?? Number.NaN);
  if (!Number.isInteger(length)) return { status: 411, detail: 'it does not say how long it is' };
  const most = isJoining(method) ? MOST_JOINING_BYTES : MOST_CALL_BYTES;
  return length > most ? { status: 413, detail: `it has more than ${most} bytes` } : { ...header, length };
}
