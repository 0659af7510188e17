/** Chances for drawn charts and photographs: the same for the same seed, on every machine. */

/** A stream of chances from one seed (Park and Miller 1988, multiplier 48271). */
export class Chances {
  #state: number;

  constructor(seed: number) {
    this.#state = (seed * 7919 + 12345) % 2147483647 || 1;
    // Seeds that follow each other begin alike; a few steps part them.
    for (let i = 0; i < 8; i++) this.next();
  }

  /** 0 … 1. */
  next(): number {
    this.#state = (this.#state * 48271) % 2147483647;
    return this.#state / 2147483647;
  }

  between(least: number, most: number): number {
    return least + (most - least) * this.next();
  }

  /** A whole number, both ends within. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  one<T>(of: readonly T[]): T {
    return of[Math.floor(this.next() * of.length)] as T;
  }

  isSo(share: number): boolean {
    return this.next() < share;
  }

  /** `of` in another order. */
  mixed<T>(of: readonly T[]): T[] {
    const mixed = [...of];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = this.whole(0, i);
      [mixed[i], mixed[j]] = [mixed[j] as T, mixed[i] as T];
    }
    return mixed;
  }

  /** Of the normal distribution with a deviation of 1 (Box and Muller 1958). */
  normal(): number {
    return Math.sqrt(-2 * Math.log(this.next() || 1e-12)) * Math.cos(2 * Math.PI * this.next());
  }
}

/** A number 0 … 1 that belongs to a place and never changes. */
export function grain(x: number, y: number, salt = 0): number {
  let h = Math.imul(x | 0, 374761393) ^ Math.imul(y | 0, 668265263) ^ Math.imul(salt | 0, 2147483629);
  h = Math.imul(h ^ (h >>> 13), 1274126177);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

/** Grain that changes smoothly from one whole place to the next, −1 … 1. */
export function ripple(x: number, y: number, salt = 0): number {
  const left = Math.floor(x);
  const top = Math.floor(y);
  const [fx, fy] = [soft(x - left), soft(y - top)];
  const upper = grain(left, top, salt) * (1 - fx) + grain(left + 1, top, salt) * fx;
  const lower = grain(left, top + 1, salt) * (1 - fx) + grain(left + 1, top + 1, salt) * fx;
  return 2 * (upper * (1 - fy) + lower * fy) - 1;
}

function soft(t: number): number {
  return t * t * (3 - 2 * t);
}
