/**
 * Text that follows the pointer, no oftener than it can be read. To write it
 * lays the page out and paints it, which takes longer than to draw what is
 * pointed at: what passes by within an instant is left out.
 */

/** Text that has stood for so long is read, ms. */
export const REST_MS = 50;
/** While it goes on changing it is written once in so many ms. */
export const MOVING_MS = 500;

export class LegibleText {
  #wanted = '';
  #written = '';
  #writtenAt = -Infinity;
  #turn: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly write: (text: string) => void,
    private readonly now: () => number = () => performance.now(),
  ) {}

  /** The text as it is now: written at once where none was for a while, else once it rests. None at all is written at once. */
  take(text: string): void {
    this.#wanted = text;
    clearTimeout(this.#turn);
    if (text === this.#written) return;
    const left = this.#writtenAt + MOVING_MS - this.now();
    if (text === '' || left <= 0) this.#writeNow();
    else this.#turn = setTimeout(() => this.#writeNow(), Math.min(REST_MS, left));
  }

  stop(): void {
    clearTimeout(this.#turn);
  }

  #writeNow(): void {
    this.#written = this.#wanted;
    this.#writtenAt = this.now();
    this.write(this.#written);
  }
}
