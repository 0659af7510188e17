/** JSON with bytes behind it. */
import { describe, expect, it } from 'vitest';
import { bodyOf, readBody } from '@shared/host/sealed/index.ts';

const encode = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);
const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const there = (value: unknown) => readBody(bodyOf(value, encode), decode);

describe('the body of a call', () => {
  it.each([{}, [], null, 'a\u0000b', { ok: true, value: { text: 'Häkelmaß', none: null } }])(
    'is JSON where nothing but JSON is said: %j',
    (value) => {
      expect(decode(bodyOf(value, encode))).toBe(JSON.stringify(value));
      expect(there(value)).toEqual({ value, buffer: null });
    },
  );

  it('has bytes as they are, none of them twice', () => {
    const bytes = Uint8Array.from({ length: 100_000 }, (_, at) => (at * 7) & 255);
    const value = { ok: true, value: { name: 'a\u0000.png', bytes, more: [new Uint8Array(), bytes.subarray(3, 5)] } };
    const body = bodyOf(value, encode);
    expect(body.length).toBeLessThan(bytes.length + 200);
    const read = readBody(body, decode);
    expect(read.value).toEqual(value);
    expect(read.buffer).toBe(body.buffer);
  });

  it('has the bytes of Node too, which have a JSON of their own', () =>
    expect(there({ bytes: Buffer.from('knit') }).value).toEqual({ bytes: new Uint8Array(encode('knit')) }));

  it('is nothing else', () => expect(() => readBody(encode('{'), decode)).toThrow(SyntaxError));
});
