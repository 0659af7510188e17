/** Unpacking, against zlib itself (of Node): what it unpacks comes out, and what it refuses is refused. */
import { constants, deflateRawSync, inflateRawSync, type ZlibOptions } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { unpack, type Unpacked } from '../../../src-shared/picture/formats/inflate.ts';
import { changedBytes } from '../../fuzz/bytes.ts';
import { diceOf, type Dice } from '../../fuzz/random.ts';

const MOST = 10_000_000;
/** Deflate, a window of 32 kB, no dictionary (RFC 1950, 2.2). */
const HEADER = Buffer.of(0x78, 0x9c);

/** What came out, and how it ended. */
function unpacked(parts: readonly Uint8Array[], most = MOST): { bytes: Buffer; end: Unpacked } {
  const pieces: Buffer[] = [];
  const end = unpack(parts, most, (piece) => pieces.push(Buffer.from(piece)));
  return { bytes: Buffer.concat(pieces), end };
}

/** What zlib makes of a stream without header and checksum, which may end early; null for what it refuses. */
function byZlib(bare: Uint8Array): Buffer | null {
  try {
    return inflateRawSync(bare, { finishFlush: constants.Z_SYNC_FLUSH });
  } catch {
    return null;
  }
}

/** Bytes of so many letters, with copies from far back and from near, short and long. */
function bytesOf(dice: Dice, length: number, letters: number): Buffer {
  const bytes = Buffer.alloc(length);
  for (let at = 0; at < length; at++) bytes[at] = dice.below(letters);
  for (let copies = length / 500; copies > 0; copies--) {
    const from = dice.below(length);
    bytes.copy(bytes, dice.below(length), from, from + dice.below(600));
  }
  return bytes;
}

function inParts(dice: Dice, bytes: Buffer): Buffer[] {
  const parts: Buffer[] = [];
  for (let at = 0; at < bytes.length;) {
    const length = dice.below(dice.pick([2, 40, 5000]));
    parts.push(bytes.subarray(at, at + length));
    at += length;
  }
  return parts;
}

const WAYS: readonly ZlibOptions[] = [
  { level: 0 },
  { level: 1 },
  { level: 9 },
  { strategy: constants.Z_HUFFMAN_ONLY },
  { strategy: constants.Z_RLE },
  { strategy: constants.Z_FIXED },
  { level: 6, memLevel: 1 },
  { finishFlush: constants.Z_FULL_FLUSH },
];

describe('a zlib stream', () => {
  it.each([1, 2, 3, 30, 256])('of %i letters comes out as it went in, however it was packed', (letters) => {
    for (const [seed, way] of WAYS.entries()) {
      const dice = diceOf(100 * letters + seed);
      for (const length of [0, 1, 300, 33_000, 150_000]) {
        const bytes = bytesOf(dice, length, letters);
        const packed = Buffer.concat([HEADER, deflateRawSync(bytes, way), Buffer.from('anything behind')]);
        // What a flush ends with goes on; zlib needs none after it, and neither is any there.
        const stream = way.finishFlush === undefined ? packed : packed.subarray(0, -15);
        const { bytes: out, end } = unpacked(inParts(dice, stream));
        expect(end).toBe('whole');
        expect(out.equals(bytes), `${length} bytes, ${JSON.stringify(way)}`).toBe(true);
      }
    }
  });

  it('with codes of 15 bits comes out as well', () => {
    // Each letter as often as the two before together: the codes of the rarest are as long as can be.
    const bytes: number[] = [];
    for (let letter = 0, often = 1, before = 1; letter < 20; letter++, [often, before] = [often + before, often]) {
      for (let count = 0; count < often; count++) bytes.push(letter);
    }
    const packed = deflateRawSync(Buffer.from(bytes), { strategy: constants.Z_HUFFMAN_ONLY, memLevel: 9 });
    expect(unpacked([HEADER, packed]).bytes.equals(Buffer.from(bytes))).toBe(true);
  });

  it('that is spoiled or cut off anywhere gives what zlib makes of it', () => {
    const dice = diceOf(7);
    let refused = 0;
    let short = 0;
    for (let round = 0; round < 3000; round++) {
      const bytes = bytesOf(dice, dice.below(2000), dice.pick([1, 2, 30, 256]));
      const good = deflateRawSync(bytes, dice.pick(WAYS));
      const bad = dice.once(3) ? good.subarray(0, dice.below(good.length + 1)) : changedBytes(good, dice);
      const expected = byZlib(bad);
      const { bytes: out, end } = unpacked([HEADER, ...inParts(dice, Buffer.from(bad))]);
      expect(end, `round ${round}`).toBe(expected === null ? 'broken' : 'whole');
      if (expected === null) refused++;
      else {
        expect(out.equals(expected), `round ${round}`).toBe(true);
        if (out.length < bytes.length) short++;
      }
    }
    expect(refused).toBeGreaterThan(300);
    expect(short).toBeGreaterThan(300);
  });

  it.each([
    ['another method', [0x77, 0x85]],
    ['a window that is too large', [0x88, 0x1c]],
    ['a header whose check is wrong', [0x78, 0x9d]],
    ['a dictionary that is not there', [0x78, 0xbb]],
  ])('with %s is refused', (_case, header) => {
    expect(unpacked([Buffer.from(header), deflateRawSync(Buffer.alloc(9))])).toEqual({
      bytes: Buffer.alloc(0),
      end: 'broken',
    });
  });

  it('is not unpacked further than its bound, and what lies beyond is not handed on', () => {
    const stream = [HEADER, deflateRawSync(Buffer.alloc(1_000_000))];
    expect(unpacked(stream, 1_000_000)).toMatchObject({ end: 'whole', bytes: { length: 1_000_000 } });
    const tooMuch = unpacked(stream, 999_999);
    expect(tooMuch.end).toBe('too-much');
    expect(tooMuch.bytes.length).toBeLessThan(1_000_000);
  });

  it('comes out in pieces of one buffer, so that nothing piles up', () => {
    const buffers = new Set<ArrayBufferLike>();
    unpack([HEADER, deflateRawSync(Buffer.alloc(5_000_000))], MOST, (piece) => buffers.add(piece.buffer));
    expect(buffers.size).toBe(1);
    expect([...buffers][0]?.byteLength).toBeLessThan(200_000);
  });

  it('lets through what is thrown by who takes it', () => {
    const full = new Error('full');
    expect(() =>
      unpack([HEADER, deflateRawSync(Buffer.alloc(9))], MOST, () => {
        throw full;
      }),
    ).toThrow(full);
  });
});
