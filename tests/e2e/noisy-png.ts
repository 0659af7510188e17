/** A PNG of noise, as large as the file of a picture may be. */
import { crc32 } from 'node:zlib';

/** The longest block that is stored as it is (RFC 1951, 3.2.4). */
const BLOCK = 0xffff;

/**
 * A PNG (ISO/IEC 15948) of `width` × `height` pixels with alpha that does not
 * pack at all: its bytes are stored. One row stands in it again and again.
 */
export function noisyPng(width: number, height: number): Buffer {
  const row = Buffer.alloc(1 + width * 4);
  let chance = 1;
  for (let at = 1; at < row.length; at++) {
    chance = (Math.imul(chance, 1_664_525) + 1_013_904_223) >>> 0;
    row[at] = chance >>> 24;
  }
  const rows = Buffer.alloc(row.length * height, row);
  const stream = [Buffer.of(0x78, 0x01)];
  for (let at = 0; at < rows.length; at += BLOCK) {
    const block = rows.subarray(at, at + BLOCK);
    const head = Buffer.of(at + BLOCK >= rows.length ? 1 : 0, 0, 0, 0, 0);
    head.writeUInt16LE(block.length, 1);
    head.writeUInt16LE(block.length ^ 0xffff, 3);
    stream.push(head, block);
  }
  const checksum = Buffer.alloc(4);
  checksum.writeUInt32BE(adler32(rows));
  const size = Buffer.alloc(8);
  size.writeUInt32BE(width, 0);
  size.writeUInt32BE(height, 4);
  return Buffer.concat([
    Buffer.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    ...chunk('IHDR', size, Buffer.of(8, 6, 0, 0, 0)),
    ...chunk('IDAT', ...stream, checksum),
    ...chunk('IEND'),
  ]);
}

function chunk(name: string, ...body: readonly Buffer[]): Buffer[] {
  const named = [Buffer.from(name, 'latin1'), ...body];
  const length = Buffer.alloc(4);
  length.writeUInt32BE(body.reduce((sum, part) => sum + part.length, 0));
  const checksum = Buffer.alloc(4);
  checksum.writeUInt32BE(named.reduce((sum, part) => crc32(part, sum), 0));
  return [length, ...named, checksum];
}

/** RFC 1950, 8.2. */
function adler32(bytes: Buffer): number {
  let a = 1;
  let b = 0;
  for (let at = 0; at < bytes.length;) {
    // So many bytes as cannot carry the sums past 32 bits.
    for (const end = Math.min(at + 5552, bytes.length); at < end; at++) {
      a += bytes[at] as number;
      b += a;
    }
    a %= 65_521;
    b %= 65_521;
  }
  return b * 65_536 + a;
}
