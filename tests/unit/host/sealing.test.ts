/** Sealing, read and made by Node's own cipher, which nobody here wrote. */
import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import {
  about,
  headerFromText,
  headerText,
  headText,
  isProof,
  isSecret,
  newSecret,
  open,
  proofOf,
  seal,
  sealingKeys,
  type SealUse,
} from '@shared/host/sealed/index.ts';

const { crypto } = globalThis;
const SECRET = 'MDEyMzQ1Njc4OWFiY2RlZjAxMjM0NTY3ODlhYmNkZWY';
const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

/** RFC 5869 by OpenSSL. */
const keyByNode = (use: SealUse, way: 'to host' | 'to page'): Uint8Array =>
  new Uint8Array(hkdfSync('sha256', SECRET, '', `walewright 1 ${use} ${way}`, 32));

describe('what is sealed', () => {
  it('is opened by anybody who has the key and what it is about: IV, AES-256-GCM, tag', async () => {
    const { toHost } = await sealingKeys(crypto, SECRET, 'run');
    const sealed = await seal(crypto, toHost, 'call x', bytes('Häkelmaß'));
    const decipher = createDecipheriv('aes-256-gcm', keyByNode('run', 'to host'), sealed.subarray(0, 12));
    decipher.setAAD(bytes('call x'));
    decipher.setAuthTag(sealed.subarray(-16));
    const opened = Buffer.concat([decipher.update(sealed.subarray(12, -16)), decipher.final()]);
    expect(opened.toString('utf8')).toBe('Häkelmaß');
  });

  it('may have been sealed by anybody who has the key', async () => {
    const iv = randomBytes(12);
    const cipher = createCipheriv('aes-256-gcm', keyByNode('storage', 'to page'), iv);
    cipher.setAAD(bytes('work'));
    const sealed = Buffer.concat([iv, cipher.update('of the person'), cipher.final(), cipher.getAuthTag()]);
    const { toPage } = await sealingKeys(crypto, SECRET, 'storage');
    const opened = await open(crypto, toPage, 'work', new Uint8Array(sealed));
    expect(new TextDecoder().decode(opened ?? undefined)).toBe('of the person');
  });

  it('opens with no other use, way, secret or subject', async () => {
    const { toHost, toPage } = await sealingKeys(crypto, SECRET, 'run');
    const sealed = await seal(crypto, toHost, 'call x', bytes('{}'));
    expect(await open(crypto, toHost, 'call x', sealed)).toEqual(bytes('{}'));
    expect(await open(crypto, toPage, 'call x', sealed)).toBeNull();
    expect(await open(crypto, toHost, 'call y', sealed)).toBeNull();
    for (const use of ['entry', 'rejoining', 'storage'] as const) {
      expect(await open(crypto, (await sealingKeys(crypto, SECRET, use)).toHost, 'call x', sealed)).toBeNull();
    }
    const other = await sealingKeys(crypto, newSecret(crypto), 'run');
    expect(await open(crypto, other.toHost, 'call x', sealed)).toBeNull();
  });

  it('opens with no bit of it changed, and not when it is cut', async () => {
    const { toHost } = await sealingKeys(crypto, SECRET, 'run');
    const sealed = await seal(crypto, toHost, 'x', bytes('{}'));
    for (let bit = 0; bit < sealed.length * 8; bit++) {
      const changed = sealed.slice();
      changed[bit >> 3] = (changed[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      expect(await open(crypto, toHost, 'x', changed)).toBeNull();
    }
    for (let length = 0; length < sealed.length; length++) {
      expect(await open(crypto, toHost, 'x', sealed.slice(0, length))).toBeNull();
    }
  });

  it('is never the same twice', async () => {
    const { toHost } = await sealingKeys(crypto, SECRET, 'run');
    const [one, other] = await Promise.all([
      seal(crypto, toHost, 'x', bytes('a')),
      seal(crypto, toHost, 'x', bytes('a')),
    ]);
    expect(one).not.toEqual(other);
  });

  it('is told of in ASCII alone, so that no two subjects look the same', async () => {
    const { toHost } = await sealingKeys(crypto, SECRET, 'run');
    await expect(seal(crypto, toHost, 'Maß', bytes(''))).rejects.toThrow(RangeError);
  });
});

describe('a secret', () => {
  it('is 32 bytes in base64url, as Node writes it', () => {
    for (let i = 0; i < 100; i++) {
      const chance = randomBytes(32);
      const given = { ...crypto, subtle: crypto.subtle, getRandomValues: (into: Uint8Array) => into.set(chance) };
      expect(newSecret(given)).toBe(chance.toString('base64url'));
    }
    expect(isSecret(newSecret(crypto))).toBe(true);
  });

  it.each(['', 'x'.repeat(42), 'x'.repeat(44), `${'x'.repeat(42)}=`, `${'x'.repeat(43)}\n`])('is not %j', (text) =>
    expect(isSecret(text)).toBe(false),
  );
});

describe('a proof', () => {
  it('holds for its key and what it is about, and for nothing else', async () => {
    const [ours, others] = await Promise.all([1, 2].map(() => sealingKeys(crypto, newSecret(crypto), 'run')));
    if (!ours || !others) throw new Error('no keys');
    const proof = await proofOf(crypto, ours.toHost, 'head one');
    expect(await isProof(crypto, ours.toHost, 'head one', proof)).toBe(true);
    expect(await isProof(crypto, ours.toHost, 'head two', proof)).toBe(false);
    expect(await isProof(crypto, ours.toPage, 'head one', proof)).toBe(false);
    expect(await isProof(crypto, others.toHost, 'head one', proof)).toBe(false);
  });

  it.each(['', '0a1b', 'x'.repeat(56), '0'.repeat(56), '0'.repeat(58)])('is not %j', async (text) => {
    const { toHost } = await sealingKeys(crypto, newSecret(crypto), 'run');
    expect(await isProof(crypto, toHost, 'head', text)).toBe(false);
  });
});

describe('what stands over a call', () => {
  const head = { authority: '127.0.0.1:4000', window: 'w'.repeat(43), count: 12, method: 'host.describe' };

  it('is read as it was written', () => {
    expect(headText(head)).toBe(`127.0.0.1:4000 ${'w'.repeat(43)} 12 host.describe`);
    expect(headerFromText(headerText({ head, proof: '0a1b' }))).toEqual({ head, proof: '0a1b' });
  });

  it('is another over its answer', () => expect(about.call(head)).not.toBe(about.answer(head)));

  it.each([
    '',
    '127.0.0.1:4000',
    `127.0.0.1:4000 ${'w'.repeat(43)} 0 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 01 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1.5 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} -1 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1e3 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 99999999999999999 here 0a1b`,
    `127.0.0.1:4000 w 1 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1 ../here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1 here 0a1b `,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1 here 0a1b\n`,
    ` 127.0.0.1:4000 ${'w'.repeat(43)} 1 here 0a1b`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1 here`,
    `127.0.0.1:4000 ${'w'.repeat(43)} 1 here 0A1B`,
  ])('is not %j', (text) => expect(headerFromText(text)).toBeNull());
});
