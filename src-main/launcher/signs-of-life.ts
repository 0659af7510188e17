/** Whether something that runs by itself still gets on. */

/** Remembers when something was last heard or had grown. Times are in ms, of any clock. */
export class SignsOfLife {
  #last: number;
  #size = 0;

  constructor(
    readonly patienceMs: number,
    now: number,
  ) {
    this.#last = now;
  }

  /** It said something. */
  heard(now: number): void {
    this.#last = now;
  }

  /** What it makes has this size now; any change is a sign. */
  seen(size: number, now: number): void {
    if (size !== this.#size) this.#last = now;
    this.#size = size;
  }

  /** Whether there was no sign for as long as one has patience. */
  isSilent(now: number): boolean {
    return now - this.#last >= this.patienceMs;
  }
}
