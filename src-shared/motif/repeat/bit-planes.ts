/**
 * A grid as bit planes: plane k holds bit k of every palette index, 32 cells a
 * word, each row padded to whole words. Two cells differ if any plane differs,
 * so cells are compared 32 at a time.
 */
import type { Grid } from '../../grid/index.ts';

export class BitPlanes {
  readonly #grid: Grid;
  readonly #words: number;
  readonly #planes: readonly Int32Array[];

  constructor(grid: Grid) {
    this.#grid = grid;
    this.#words = Math.ceil(grid.width / 32) + 1; // one spare word, so that shifting may read past the end
    let all = 0;
    for (const cell of grid.cells) all |= cell;
    const depth = Math.max(1, 32 - Math.clz32(all));
    this.#planes = Array.from({ length: depth }, (_, bit) => this.#pack(bit));
  }

  /** Bits that hold every palette index of the grid. */
  get depth(): number {
    return this.#planes.length;
  }

  /** True if more than `most` cells differ from the cell `columns` to their right. */
  differAcross(columns: number, most: number): boolean {
    const { width, height } = this.#grid;
    const whole = columns >> 5;
    const rest = columns & 31;
    const compared = width - columns;
    let count = 0;
    for (let row = 0; row < height; row++) {
      const start = row * this.#words;
      for (let word = 0; word * 32 < compared; word++) {
        let differing = 0;
        for (const plane of this.#planes) {
          const low = plane[start + word + whole] as number;
          const high = plane[start + word + whole + 1] as number;
          const shifted = rest === 0 ? low : (low >>> rest) | (high << (32 - rest));
          differing |= (plane[start + word] as number) ^ shifted;
        }
        const left = compared - word * 32;
        if (left < 32) differing &= (1 << left) - 1;
        count += bitCount(differing);
      }
      if (count > most) return true;
    }
    return false;
  }

  /**
   * True if the repeat of `rows` rows has more than `most` slips, as far as
   * neighbouring copies tell; false decides nothing.
   *
   * The first copy is compared with the second, the third with the fourth, and
   * so on: every cell stands in one pair at most, and a pair that differs has a
   * slip. The second with the third, and so on, are pairs of the same kind.
   * Taken together a slip could spoil two, and twice as much would have to be
   * read of a drawing without any repeat.
   */
  slipUp(rows: number, most: number): boolean {
    const copy = rows * this.#words;
    const end = (this.#grid.height - rows) * this.#words;
    const counts = [0, 0] as [number, number];
    for (let start = 0, side: 0 | 1 = 0; start < end; start += copy, side = side === 0 ? 1 : 0) {
      counts[side] = this.#differing(start, Math.min(start + copy, end), copy, counts[side], most);
      if (counts[side] > most) return true;
    }
    return false;
  }

  /** `count`, and the cells in the words `from` … `to` that differ from those `shift` words on; more than `most` is enough. */
  #differing(from: number, to: number, shift: number, count: number, most: number): number {
    const words = this.#words;
    // Most drawings have one plane, and going through a list of one for each word would take twice as long.
    const [first, ...others] = this.#planes as [Int32Array, ...Int32Array[]];
    const { length } = others;
    for (let start = from; start < to && count <= most; start += words) {
      // The spare word of each row is empty.
      for (let word = start, stop = start + words - 1; word < stop; word++) {
        let differing = (first[word] as number) ^ (first[word + shift] as number);
        for (let k = 0; k < length; k++) {
          const plane = others[k] as Int32Array;
          differing |= (plane[word] as number) ^ (plane[word + shift] as number);
        }
        count += bitCount(differing);
      }
    }
    return count;
  }

  #pack(bit: number): Int32Array {
    const { width, height, cells } = this.#grid;
    const words = this.#words;
    const plane = new Int32Array(height * words + 1);
    for (let row = 0, at = 0; row < height; row++) {
      const end = at + width;
      for (let word = row * words; at < end; word++) {
        const stop = Math.min(end, at + 32);
        let bits = 0;
        for (let place = 0; at < stop; at++, place++) bits |= (((cells[at] as number) >> bit) & 1) << place;
        plane[word] = bits;
      }
    }
    return plane;
  }
}

/** Bits set in a 32-bit word, by adding neighbouring fields of growing width. */
export function bitCount(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const nibbles = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return (((nibbles + (nibbles >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
