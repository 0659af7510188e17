/** The windows that have come in, and which calls of each have been made. */

/** Calls overtake each other on their way, but not by more than this. */
const SPAN = 4096;

/** Counts that were taken, so that none is taken twice. */
class Taken {
  #highest = 0;
  #counts = new Set<number>();

  isFresh(count: number): boolean {
    return count > this.#highest - SPAN && !this.#counts.has(count);
  }

  take(count: number): boolean {
    if (!this.isFresh(count)) return false;
    this.#counts.add(count);
    this.#highest = Math.max(this.#highest, count);
    if (this.#counts.size > 2 * SPAN) {
      this.#counts = new Set([...this.#counts].filter((taken) => taken > this.#highest - SPAN));
    }
    return true;
  }
}

export class Windows {
  /** Never forgotten while the host runs: what a forgotten window once said could be said again. */
  readonly #takenOf = new Map<string, Taken>();

  /** False for a window that has not come in, and for a call that was made or is too old. */
  isFresh(window: string, count: number): boolean {
    return this.#takenOf.get(window)?.isFresh(count) ?? false;
  }

  /** Notes a call that has opened; false if it was made before. */
  take(window: string, count: number): boolean {
    return this.#takenOf.get(window)?.take(count) ?? false;
  }

  /** Lets a window in, or in again, by a call that has opened; false if that was made before. */
  letIn(window: string, count: number): boolean {
    if (!this.#takenOf.has(window)) this.#takenOf.set(window, new Taken());
    return this.take(window, count);
  }
}
