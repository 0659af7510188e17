/**
 * How much of what is sent may be in memory at once.
 *
 * A call of 59 MB takes several times that while it is opened, read and
 * carried out, and six at once took 1.2 GB. So large calls come in as there is
 * room, in their order; what waits stays with its sender. Small ones are let
 * past, or the window would wait for a save.
 */

/** Large calls together have no more bytes than this, but for one that is larger by itself. */
const MOST_BYTES_AT_ONCE = 64 * 1024 * 1024;

const MOST_WAITING = 32;
const SMALL_BYTES = 256 * 1024;

interface Waiting {
  readonly bytes: number;
  readonly goOn: () => void;
}

export class Admission {
  #bytes = 0;
  readonly #waiting: Waiting[] = [];

  constructor(private readonly most: number = MOST_BYTES_AT_ONCE) {}

  /**
   * Resolves when there is room for `bytes`, with what gives it back; with null
   * at once where too many wait already. Rejects when `gone` aborts.
   */
  async room(bytes: number, gone: AbortSignal): Promise<(() => void) | null> {
    if (bytes <= SMALL_BYTES) return () => undefined;
    if (this.#waiting.length > 0 || !this.#fits(bytes)) {
      if (this.#waiting.length >= MOST_WAITING) return null;
      await this.#wait(bytes, gone);
    } else this.#bytes += bytes;
    return () => {
      this.#bytes -= bytes;
      this.#letIn();
    };
  }

  #fits(bytes: number): boolean {
    return this.#bytes === 0 || this.#bytes + bytes <= this.most;
  }

  #wait(bytes: number, gone: AbortSignal): Promise<void> {
    return new Promise((resolve, reject) => {
      const waiting: Waiting = {
        bytes,
        goOn: () => {
          gone.removeEventListener('abort', leave);
          resolve();
        },
      };
      const leave = (): void => {
        this.#waiting.splice(this.#waiting.indexOf(waiting), 1);
        reject(new Error('Its sender is gone'));
        // Who stood behind it may be smaller.
        this.#letIn();
      };
      this.#waiting.push(waiting);
      if (gone.aborted) leave();
      else gone.addEventListener('abort', leave, { once: true });
    });
  }

  #letIn(): void {
    for (let next = this.#waiting[0]; next && this.#fits(next.bytes); next = this.#waiting[0]) {
      this.#waiting.shift();
      this.#bytes += next.bytes;
      next.goOn();
    }
  }
}
