/**
 * Unpacking zlib streams (RFC 1950) with a bound on what comes out.
 *
 * A thousand bytes can come out of one that goes in, so what goes in says
 * nothing. The stream is fed in small pieces, what comes out is counted, and
 * nothing is fed any more once the bound is passed.
 */
import { Unzlib } from 'fflate';

/** At most a thousand times as much comes out of it (RFC 1951: 258 bytes for two bits), 4 MB. */
const PIECE = 4 * 1024;

/** `broken`: no zlib stream; `too-much`: more than the bound. A stream that ends early is `whole` with fewer bytes. */
export type Unpacked = 'whole' | 'broken' | 'too-much';

/**
 * Unpacks one stream that lies in `parts`; what comes out goes to `take` piece
 * by piece, `most` bytes at most in all. Bytes after the end of the stream are
 * let be. What `take` throws goes through.
 */
export function unpack(parts: readonly Uint8Array[], most: number, take: (piece: Uint8Array) => void): Unpacked {
  let count = 0;
  let out: Uint8Array[] = [];
  const stream = new Unzlib((piece) => out.push(piece));
  for (const part of parts) {
    for (let at = 0; at < part.length; at += PIECE) {
      try {
        stream.push(part.subarray(at, at + PIECE), false);
      } catch {
        return 'broken';
      }
      for (const piece of out) {
        count += piece.length;
        if (count > most) return 'too-much';
        take(piece);
      }
      out = [];
    }
  }
  return 'whole';
}
