/**
 * Bytes sealed with a secret that only two sides hold: who does not hold it
 * can neither read them nor make any that open.
 *
 * AES-256-GCM (NIST SP 800-38D) with a random IV of 96 bits before each text,
 * under keys drawn from the secret by HKDF with SHA-256 (RFC 5869): one for
 * each use and way, so that nothing that was sealed for one passes for
 * another. The platform's WebCrypto is given, for it brings chance with it,
 * which this layer does without.
 */

export type Bytes = Uint8Array<ArrayBuffer>;

/** A key as WebCrypto holds it: of use, and not to be read. */
export interface SealingKey {
  readonly extractable: boolean;
}

/** What is needed of WebCrypto; `globalThis.crypto` of browsers, workers and Node. */
export interface WebCrypto {
  getRandomValues(into: Bytes): unknown;
  readonly subtle: {
    importKey(
      format: 'raw',
      bytes: Bytes,
      algorithm: 'HKDF',
      extractable: boolean,
      uses: ['deriveKey'],
    ): Promise<SealingKey>;
    deriveKey(
      algorithm: { name: 'HKDF'; hash: 'SHA-256'; salt: Bytes; info: Bytes },
      base: SealingKey,
      derived: { name: 'AES-GCM'; length: 256 },
      extractable: boolean,
      uses: ['encrypt', 'decrypt'],
    ): Promise<SealingKey>;
    encrypt(algorithm: GcmParams, key: SealingKey, bytes: Bytes): Promise<ArrayBuffer>;
    decrypt(algorithm: GcmParams, key: SealingKey, bytes: Bytes): Promise<ArrayBuffer>;
  };
}

interface GcmParams {
  readonly name: 'AES-GCM';
  readonly iv: Bytes;
  readonly additionalData: Bytes;
}

/** What a secret is held for: to come in once, for the calls of a run, to come back, for work kept in a browser. */
export type SealUse = 'entry' | 'run' | 'rejoining' | 'storage';

/** One key each way. */
export interface SealingKeys {
  readonly toHost: SealingKey;
  readonly toPage: SealingKey;
}

const IV_BYTES = 12;
const TAG_BYTES = 16;

/** How many bytes sealing adds. */
const SEAL_BYTES = IV_BYTES + TAG_BYTES;

/** The keys of `secret` for `use`. The secret must be one that nobody can guess: 32 random bytes, as text. */
export async function sealingKeys({ subtle }: WebCrypto, secret: string, use: SealUse): Promise<SealingKeys> {
  const base = await subtle.importKey('raw', ascii(secret), 'HKDF', false, ['deriveKey']);
  const derive = (way: string): Promise<SealingKey> =>
    subtle.deriveKey(
      { name: 'HKDF', hash: 'SHA-256', salt: new Uint8Array(), info: ascii(`walewright 1 ${use} ${way}`) },
      base,
      { name: 'AES-GCM', length: 256 },
      false,
      ['encrypt', 'decrypt'],
    );
  const [toHost, toPage] = await Promise.all([derive('to host'), derive('to page')]);
  return { toHost, toPage };
}

/** IV and sealed `bytes`. `about` is not in them, and they open only with the same; plain ASCII. */
export async function seal(crypto: WebCrypto, key: SealingKey, about: string, bytes: Bytes): Promise<Bytes> {
  const iv = new Uint8Array(IV_BYTES);
  crypto.getRandomValues(iv);
  const body = await crypto.subtle.encrypt({ name: 'AES-GCM', iv, additionalData: ascii(about) }, key, bytes);
  const sealed = new Uint8Array(IV_BYTES + body.byteLength);
  sealed.set(iv);
  sealed.set(new Uint8Array(body), IV_BYTES);
  return sealed;
}

/** What was sealed under `key` about `about`, or null if this was not. */
export async function open(crypto: WebCrypto, key: SealingKey, about: string, sealed: Bytes): Promise<Bytes | null> {
  if (sealed.length < SEAL_BYTES) return null;
  const iv = sealed.subarray(0, IV_BYTES);
  try {
    const params: GcmParams = { name: 'AES-GCM', iv, additionalData: ascii(about) };
    return new Uint8Array(await crypto.subtle.decrypt(params, key, sealed.subarray(IV_BYTES)));
  } catch {
    // WebCrypto rejects with an OperationError where the tag is not right, and says no more.
    return null;
  }
}

/** A seal of nothing about `about`, in hexadecimal: it shows that its maker holds the key. */
export async function proofOf(crypto: WebCrypto, key: SealingKey, about: string): Promise<string> {
  const bytes = await seal(crypto, key, about, new Uint8Array());
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Whether `proof` was made by {@link proofOf} with this key about that. */
export async function isProof(crypto: WebCrypto, key: SealingKey, about: string, proof: string): Promise<boolean> {
  const pairs = /^[\da-f]+$/.test(proof) && proof.length === 2 * SEAL_BYTES ? (proof.match(/../g) ?? []) : [];
  const sealed = Uint8Array.from(pairs, (pair) => Number.parseInt(pair, 16));
  return (await open(crypto, key, about, sealed)) !== null;
}

/** 32 bytes of chance as text: base64url without padding (RFC 4648, section 5), 43 letters. */
export function newSecret(crypto: WebCrypto): string {
  const bytes = new Uint8Array(32);
  crypto.getRandomValues(bytes);
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
    for (const shift of [18, 12, 6, 0]) text += ALPHABET.charAt((((a << 16) | (b << 8) | c) >> shift) & 63);
  }
  return text.slice(0, SECRET_LENGTH);
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const SECRET_LENGTH = 43;

/** True for what {@link newSecret} can have made. */
export function isSecret(text: string): boolean {
  return /^[\w-]{43}$/.test(text);
}

/** One byte a letter; throws for letters outside ASCII, which two texts could otherwise share. */
function ascii(text: string): Bytes {
  return Uint8Array.from(text, (letter) => {
    const code = letter.charCodeAt(0);
    if (code > 0x7f) throw new RangeError('What is sealed about is told in ASCII');
    return code;
  });
}
