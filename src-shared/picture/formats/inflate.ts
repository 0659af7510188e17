/**
 * Unpacking zlib streams (RFC 1950, 1951) with a bound on what comes out.
 *
 * A thousand bytes can come out of one that goes in, so what goes in says
 * nothing: what comes out is counted, and no more is unpacked once the bound is
 * passed. All of it goes through one small window. The unpackers of libraries
 * make pieces of it, and by the time these are cleared away they have filled
 * up to 100 MB.
 */
import { PrefixCode } from './prefix-code.ts';

/** `broken`: no zlib stream; `too-much`: more than the bound. A stream that ends early is `whole` with fewer bytes. */
export type Unpacked = 'whole' | 'broken' | 'too-much';

/**
 * Unpacks one stream that lies in `parts`; what comes out goes to `take` piece
 * by piece, `most` bytes at most in all. A piece is good until `take` returns.
 * Bytes after the end of the stream are let be, and so is its checksum. What
 * `take` throws goes through.
 */
export function unpack(parts: readonly Uint8Array[], most: number, take: (piece: Uint8Array) => void): Unpacked {
  return new Unpacking(parts, most, take).run();
}

/** How far back a stream may look. */
const REACH = 32 * 1024;
/** The longest that is copied at once. */
const LONGEST = 258;
const WINDOW = 4 * REACH;

/** Lengths for symbols 257 … 285, and distances: the least that each stands for, and how many bits say what is added. */
const LENGTHS = [
  3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195, 227, 258,
];
const LENGTH_BITS = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
const DISTANCES = [
  1, 2, 3, 4, 5, 7, 9, 13, 17, 25, 33, 49, 65, 97, 129, 193, 257, 385, 513, 769, 1025, 1537, 2049, 3073, 4097, 6145,
  8193, 12289, 16385, 24577,
];
const DISTANCE_BITS = [
  0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13,
];
/** The order in which the lengths of the code for lengths are told. */
const ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];
const END_OF_BLOCK = 256;

/** Why unpacking stops; `null` where it goes on. */
type Stop = Unpacked | null;

class Unpacking {
  /** Bits that were read and not yet used, the next one lowest; in the end some are made up. */
  private bits = 0;
  private count = 0;
  private madeUp = 0;
  private part: Uint8Array = new Uint8Array();
  private partAt = 0;
  private partIndex = 0;

  private readonly out = new Uint8Array(WINDOW);
  private outAt = 0;
  /** What stands before was handed on. */
  private taken = 0;
  private total = 0;

  private readonly lengths = new Uint8Array(320);
  private readonly symbols = new PrefixCode(288);
  private readonly distances = new PrefixCode(32);

  constructor(
    private readonly parts: readonly Uint8Array[],
    private readonly most: number,
    private readonly take: (piece: Uint8Array) => void,
  ) {}

  run(): Unpacked {
    const method = this.read(8);
    const flags = this.read(8);
    if (this.isPast) return 'whole';
    const isZlib = (method & 15) === 8 && method >> 4 <= 7 && ((method << 8) | flags) % 31 === 0;
    // A dictionary is not in the stream.
    if (!isZlib || (flags & 32) !== 0) return 'broken';
    for (;;) {
      const isLast = this.read(1) === 1;
      const kind = this.read(2);
      const stop = this.isPast ? 'whole' : this.block(kind);
      if (stop === 'broken' || stop === 'too-much') return stop;
      if (isLast || stop === 'whole') return this.handOn() ?? 'whole';
    }
  }

  private block(kind: number): Stop {
    switch (kind) {
      case 0:
        return this.stored();
      case 1:
        this.fixedCodes();
        return this.packed();
      case 2:
        return this.ownCodes() ?? this.packed();
      default:
        return 'broken';
    }
  }

  private stored(): Stop {
    this.read(this.count & 7);
    const length = this.read(16);
    const complement = this.read(16);
    if (this.isPast) return 'whole';
    if ((length ^ complement) !== 0xffff) return 'broken';
    for (let left = length; left > 0;) {
      const stop = this.makeRoom();
      if (stop !== null) return stop;
      if (this.count > 0) {
        const byte = this.read(8);
        if (this.isPast) return 'whole';
        this.out[this.outAt++] = byte;
        left--;
        continue;
      }
      if (!this.hasByte()) return 'whole';
      const some = Math.min(left, this.part.length - this.partAt, WINDOW - this.outAt);
      this.out.set(this.part.subarray(this.partAt, this.partAt + some), this.outAt);
      this.partAt += some;
      this.outAt += some;
      left -= some;
    }
    return null;
  }

  private fixedCodes(): void {
    this.symbols.fill(
      this.lengths.fill(8, 0, 144).fill(9, 144, 256).fill(7, 256, 280).fill(8, 280).subarray(0, 288),
      true,
    );
    this.distances.fill(this.lengths.fill(5).subarray(0, 32), true);
  }

  /** Reads the codes of a block that brings its own (3.2.7). */
  private ownCodes(): Stop {
    const symbolCount = this.read(5) + 257;
    const distanceCount = this.read(5) + 1;
    const tellingCount = this.read(4) + 4;
    if (symbolCount > 286 || distanceCount > 30) return this.isPast ? 'whole' : 'broken';
    const { lengths } = this;
    const telling = lengths.subarray(0, ORDER.length).fill(0);
    for (let index = 0; index < tellingCount; index++) telling[ORDER[index] as number] = this.read(3);
    if (this.isPast) return 'whole';
    if (!this.symbols.fill(telling, false)) return 'broken';
    const all = symbolCount + distanceCount;
    for (let at = 0; at < all;) {
      this.refill();
      const entry = this.symbols.at(this.bits);
      if (entry === 0) return this.isPast ? 'whole' : 'broken';
      this.drop(entry & 15);
      const symbol = entry >> 4;
      if (symbol < 16) {
        if (this.isPast) return 'whole';
        lengths[at++] = symbol;
        continue;
      }
      const again = symbol === 16 ? 3 + this.read(2) : symbol === 17 ? 3 + this.read(3) : 11 + this.read(7);
      if (this.isPast) return 'whole';
      if (at + again > all || (symbol === 16 && at === 0)) return 'broken';
      lengths.fill(symbol === 16 ? (lengths[at - 1] as number) : 0, at, at + again);
      at += again;
    }
    const isGood =
      lengths[END_OF_BLOCK] !== 0 &&
      this.symbols.fill(lengths.subarray(0, symbolCount), true) &&
      this.distances.fill(lengths.subarray(symbolCount, all), true);
    return isGood ? null : 'broken';
  }

  /** Unpacks to the end of the block. */
  private packed(): Stop {
    const { out, symbols, distances } = this;
    for (;;) {
      const full = this.makeRoom();
      if (full !== null) return full;
      let at = this.outAt;
      const roomEnd = WINDOW - LONGEST;
      while (at <= roomEnd) {
        this.refill();
        const entry = symbols.at(this.bits);
        const symbol = entry >> 4;
        this.drop(entry & 15);
        if (symbol < END_OF_BLOCK && entry !== 0 && !this.isPast) {
          out[at++] = symbol;
          continue;
        }
        this.outAt = at;
        if (this.isPast) return 'whole';
        if (symbol === END_OF_BLOCK) return null;
        const index = symbol - 257;
        if (entry === 0 || index >= LENGTHS.length) return 'broken';
        const length = (LENGTHS[index] as number) + this.read(LENGTH_BITS[index] as number);
        this.refill();
        const far = distances.at(this.bits);
        this.drop(far & 15);
        const farIndex = far >> 4;
        if (far === 0 || farIndex >= DISTANCES.length) return this.isPast ? 'whole' : 'broken';
        const distance = (DISTANCES[farIndex] as number) + this.read(DISTANCE_BITS[farIndex] as number);
        if (this.isPast) return 'whole';
        if (distance > at) return 'broken';
        const end = at + length;
        if (distance === 1) out.fill(out[at - 1] as number, at, end);
        else if (distance >= length) out.copyWithin(at, at - distance, at - distance + length);
        else for (let to = at; to < end; to++) out[to] = out[to - distance] as number;
        at = end;
      }
      this.outAt = at;
    }
  }

  /** Hands on what is new, and keeps what the stream may look back at, where there is no room for the longest copy. */
  private makeRoom(): Stop {
    if (this.outAt <= WINDOW - LONGEST) return null;
    const stop = this.handOn();
    this.out.copyWithin(0, this.outAt - REACH, this.outAt);
    this.outAt = REACH;
    this.taken = REACH;
    return stop;
  }

  private handOn(): Stop {
    const count = this.outAt - this.taken;
    this.total += count;
    if (this.total > this.most) return 'too-much';
    if (count > 0) this.take(this.out.subarray(this.taken, this.outAt));
    this.taken = this.outAt;
    return null;
  }

  /** True once bits were used that the stream does not have. */
  private get isPast(): boolean {
    return 8 * this.madeUp > this.count;
  }

  /** The next bits, 16 at most, as a number of which the first is the lowest. */
  private read(count: number): number {
    if (this.count < count) this.refill();
    const value = this.bits & ((1 << count) - 1);
    this.drop(count);
    return value;
  }

  private drop(count: number): void {
    this.bits >>>= count;
    this.count -= count;
  }

  /** At least 24 bits are there afterwards. */
  private refill(): void {
    while (this.count < 24) {
      if (this.hasByte()) this.bits |= (this.part[this.partAt++] as number) << this.count;
      else this.madeUp++;
      this.count += 8;
    }
  }

  private hasByte(): boolean {
    while (this.partAt >= this.part.length) {
      const next = this.parts[this.partIndex++];
      if (next === undefined) return false;
      this.part = next;
      this.partAt = 0;
    }
    return true;
  }
}
