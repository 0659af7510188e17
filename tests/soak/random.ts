/** Choices that look random and are the same for the same seed. */
import { repeatableRandom } from '@shared/reading/k-means.ts';

export class Random {
  /** From 0 up to, but not, 1. */
  readonly next: () => number;

  constructor(seed: number) {
    this.next = repeatableRandom(seed);
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
