/** Reading what a request brings. */
import type { IncomingMessage } from 'node:http';

/** The body, `length` bytes; rejects if it ends before, or its sender is gone. Node lets none be longer. */
export async function wholeBody(request: IncomingMessage, length: number): Promise<Uint8Array<ArrayBuffer>> {
  const body = new Uint8Array(length);
  let at = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    body.set(chunk, at);
    at += chunk.length;
  }
  if (at < length) throw new Error('The body ended early');
  return body;
}
