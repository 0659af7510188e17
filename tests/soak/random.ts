/** Numbers that look random and are the same for the same seed: mulberry32, public domain (Tommy Ettinger, 2017). */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, but not, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  }

  /** A whole number of `least` … `most`. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  /** One of them. Throws `RangeError` for none. */
  of<Item>(items: readonly Item[]): Item {
    if (items.length === 0) throw new RangeError('There is nothing to choose from');
    return items[this.whole(0, items.length - 1)] as Item;
  }
}
