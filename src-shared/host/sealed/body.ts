/**
 * What stands inside a seal: JSON, and behind it bytes that belong to it.
 *
 * Bytes written into JSON as text take a third more room, and several times
 * over: as text, as the bytes of that text, and as a string of the page. So they
 * follow it as they are. A zero byte parts the two, which no JSON holds (RFC
 * 8259 has control characters escaped).
 */
import type { Bytes } from './seal.ts';

/** Stands in the JSON for bytes, with where they begin and end behind it; no object of the contract has it. */
const MARK = 'bytes behind';

/** The body for a value that JSON can tell, but for the bytes in it. `encode`: to UTF-8. */
export function bodyOf(value: unknown, encode: (text: string) => Bytes): Bytes {
  const parts: Uint8Array[] = [];
  let end = 0;
  const json = encode(
    JSON.stringify(value, function (this: Record<string, unknown>, key, told: unknown) {
      // Not what is told: some bytes have a JSON of their own.
      const own = this[key];
      if (!(own instanceof Uint8Array)) return told;
      parts.push(own);
      const from = end;
      end += own.length;
      return { [MARK]: [from, end] };
    }),
  );
  if (parts.length === 0) return json;
  const body = new Uint8Array(json.length + 1 + end);
  body.set(json);
  let at = json.length + 1;
  for (const part of parts) {
    body.set(part, at);
    at += part.length;
  }
  return body;
}

export interface ReadBody {
  readonly value: unknown;
  /** What bytes of the value lie in, not copied; null if it has none. */
  readonly buffer: ArrayBuffer | null;
}

/** What {@link bodyOf} wrote. Throws `SyntaxError` for what is no JSON. `decode`: from UTF-8. */
export function readBody(body: Bytes, decode: (bytes: Bytes) => string): ReadBody {
  const end = body.indexOf(0);
  if (end < 0) return { value: JSON.parse(decode(body)), buffer: null };
  const behind = body.subarray(end + 1);
  const value: unknown = JSON.parse(decode(body.subarray(0, end)), (_key, told: unknown) => {
    const place = typeof told === 'object' && told !== null ? (told as { [MARK]?: [number, number] })[MARK] : undefined;
    return place === undefined ? told : behind.subarray(...place);
  });
  return { value, buffer: body.buffer };
}
