/**
 * Prefix codes of packed streams (RFC 1951, 3.2.2), told by the length of each
 * symbol's code. Filled again for each block: nothing is made anew.
 */

/** No code is longer, in bits. */
const LONGEST = 15;

/** Codes of at most so many bits are looked up; longer ones, which are rare, are gone through bit by bit. */
const LOOKED_UP = 10;

const MASK = (1 << LOOKED_UP) - 1;

export class PrefixCode {
  /** By the next bits of the stream, of which the first is the lowest: symbol × 16 + length, 0 for longer codes. */
  readonly #lookup = new Uint16Array(1 << LOOKED_UP);
  /** How many codes each length has. */
  readonly #counts = new Uint16Array(LONGEST + 1);
  readonly #next = new Uint16Array(LONGEST + 1);
  /** In the order of their codes. */
  readonly #symbols: Uint16Array;

  /** `most`: how many symbols there can be. */
  constructor(most: number) {
    this.#symbols = new Uint16Array(most);
  }

  /**
   * Takes the lengths of the codes of symbols 0, 1 …; 0 for one that is not used.
   * False if no such code is possible, or if it leaves bits without a meaning
   * while more than one is used (or, unless `mayBeLone`, at all).
   */
  fill(lengths: Uint8Array, mayBeLone: boolean): boolean {
    const counts = this.#counts.fill(0);
    let longest = 0;
    for (const length of lengths) {
      counts[length] = (counts[length] as number) + 1;
      if (length > longest) longest = length;
    }
    counts[0] = 0;
    let left = 1;
    for (let length = 1; length <= LONGEST; length++) {
      left = 2 * left - (counts[length] as number);
      if (left < 0) return false;
    }
    if (left > 0 && !(mayBeLone && longest <= 1)) return false;
    this.#order(lengths);
    this.#layOut();
    return true;
  }

  /**
   * The symbol that `bits` begin with, × 16, and the length of its code; 0 for none.
   * At least 15 bits must be there.
   */
  at(bits: number): number {
    return this.#lookup[bits & MASK] || this.#goThrough(bits);
  }

  #order(lengths: Uint8Array): void {
    const next = this.#next;
    for (let length = 1, at = 0; length <= LONGEST; length++) {
      next[length] = at;
      at += this.#counts[length] as number;
    }
    for (let symbol = 0; symbol < lengths.length; symbol++) {
      const length = lengths[symbol] as number;
      if (length === 0) continue;
      const at = next[length] as number;
      this.#symbols[at] = symbol;
      next[length] = at + 1;
    }
  }

  #layOut(): void {
    const lookup = this.#lookup.fill(0);
    for (let length = 1, code = 0, at = 0; length <= LOOKED_UP; length++, code <<= 1) {
      for (let count = this.#counts[length] as number; count > 0; count--, code++, at++) {
        const entry = ((this.#symbols[at] as number) << 4) | length;
        for (let bits = reversed(code, length); bits <= MASK; bits += 1 << length) lookup[bits] = entry;
      }
    }
  }

  #goThrough(bits: number): number {
    let code = 0;
    let first = 0;
    let at = 0;
    for (let length = 1; length <= LONGEST; length++) {
      code |= (bits >> (length - 1)) & 1;
      const count = this.#counts[length] as number;
      if (code < first + count) return ((this.#symbols[at + code - first] as number) << 4) | length;
      at += count;
      first = (first + count) << 1;
      code <<= 1;
    }
    return 0;
  }
}

/** Codes are packed from their highest bit on. */
function reversed(code: number, length: number): number {
  let turned = 0;
  for (let bit = 0; bit < length; bit++) turned |= ((code >> bit) & 1) << (length - 1 - bit);
  return turned;
}
