/** Reading what a request brings, within a bound. */
import type { IncomingMessage } from 'node:http';

/** The longest text of the contract, with room for what JSON escapes. */
export const MOST_BODY_BYTES = 128 * 1024 * 1024;

/** The body as text, or null if it is longer than `most` bytes; the rest is then not read. */
export async function bodyText(request: IncomingMessage, most: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > most) return null;
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > most) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}
