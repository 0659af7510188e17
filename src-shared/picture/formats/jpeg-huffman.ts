/** Huffman codes of a JPEG and the bits that they are read from (ITU-T T.81, annexes C and F). */
import { brokenJpeg } from './jpeg-segments.ts';

/** Codes up to this length are looked up at once. */
const QUICK = 9;

export interface HuffmanTable {
  /** By the next {@link QUICK} bits: length · 256 + symbol, or 0 for a longer code. */
  readonly quick: Uint16Array;
  /** By length: the first number that is too large for a code of it, left-aligned in 16 bits. */
  readonly beyond: Uint32Array;
  /** By length: add to a code to have its place among the symbols. */
  readonly offset: Int32Array;
  readonly symbols: Uint8Array;
}

/** `counts`: how many codes there are of each length 1 … 16 (C.2). Throws `picture-broken` for more than fit. */
export function huffmanTable(counts: Uint8Array, symbols: Uint8Array): HuffmanTable {
  const quick = new Uint16Array(1 << QUICK);
  const beyond = new Uint32Array(18);
  const offset = new Int32Array(17);
  let code = 0;
  let place = 0;
  for (let length = 1; length <= 16; length++) {
    const count = counts[length - 1] as number;
    if (code + count > 1 << length) throw brokenJpeg('pixels');
    offset[length] = place - code;
    for (let index = 0; index < count; index++, code++, place++) {
      if (length > QUICK) continue;
      const from = code << (QUICK - length);
      quick.fill((length << 8) | (symbols[place] as number), from, from + (1 << (QUICK - length)));
    }
    beyond[length] = code << (16 - length);
    code <<= 1;
  }
  beyond[17] = 0xffffffff;
  return { quick, beyond, offset, symbols };
}

/** Reads the bits of one scan. Past their end, or before a restart marker, there are noughts, and {@link isPastEnd} tells. */
export class JpegBits {
  private buffer = 0;
  private count = 0;
  /** Bits in the buffer that no byte stands for. */
  private made = 0;
  private at = 0;

  constructor(private readonly bytes: Uint8Array) {}

  /** True once bits were used that are not there. */
  get isPastEnd(): boolean {
    return this.made > this.count;
  }

  /** At most 16 bits, as a number. */
  take(length: number): number {
    if (length === 0) return 0;
    if (this.count < length) this.fill();
    this.count -= length;
    return (this.buffer >>> this.count) & ((1 << length) - 1);
  }

  /** F.2.2.1: a number of that many bits, its sign told by its first one. */
  takeSigned(length: number): number {
    if (length === 0) return 0;
    const value = this.take(length);
    return value < 1 << (length - 1) ? value - (1 << length) + 1 : value;
  }

  symbol(table: HuffmanTable): number {
    if (this.count < 16) this.fill();
    const quick = table.quick[(this.buffer >>> (this.count - QUICK)) & ((1 << QUICK) - 1)] as number;
    if (quick !== 0) {
      this.count -= quick >> 8;
      return quick & 255;
    }
    const bits = (this.buffer >>> (this.count - 16)) & 0xffff;
    let length = QUICK + 1;
    while (bits >= (table.beyond[length] as number)) length++;
    if (length > 16) throw brokenJpeg('pixels');
    this.count -= length;
    return table.symbols[(bits >> (16 - length)) + (table.offset[length] as number)] as number;
  }

  /** Goes on after the restart marker of that number, 0 … 7. Throws `picture-broken` if it is not there. */
  restart(number: number): void {
    while (this.bytes[this.at] === 0xff && this.bytes[this.at + 1] === 0xff) this.at++;
    if (this.isPastEnd || this.bytes[this.at] !== 0xff || this.bytes[this.at + 1] !== 0xd0 + number)
      throw brokenJpeg('pixels');
    this.at += 2;
    this.buffer = this.count = this.made = 0;
  }

  private fill(): void {
    while (this.count <= 24) {
      let byte = this.bytes[this.at];
      if (byte === undefined || (byte === 0xff && this.bytes[this.at + 1] !== 0)) {
        byte = 0;
        this.made += 8;
      } else this.at += byte === 0xff ? 2 : 1;
      this.buffer = (this.buffer << 8) | byte;
      this.count += 8;
    }
  }
}
