/**
 * Has something made by a worker, part by part: one thing at a time, the latest
 * wins.
 *
 * A worker that is busy with another is ended: nothing that it says is wanted,
 * and it hears nothing before it is done. Where a worker cannot be had or fails,
 * the window makes the parts by itself, and lets others have a turn after each.
 */
export interface Question<Wanted> {
  readonly id: number;
  readonly wanted: Wanted;
}

/** A part of what was wanted; null once all parts were sent. */
export interface Answer<Part> {
  readonly id: number;
  readonly part: Part | null;
}

/** What is needed of a `Worker`. */
export interface Helper<Wanted, Part> {
  postMessage(question: Question<Wanted>): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer<Part>>) => unknown) | null;
  onerror: ((event: ErrorEvent) => unknown) | null;
}

interface Asked<Wanted, Part> extends Question<Wanted> {
  readonly tell: (part: Part) => void;
}

export class WorkerClient<Wanted, Part> {
  #helper: Helper<Wanted, Part> | null = null;
  #asked: Asked<Wanted, Part> | null = null;
  #count = 0;

  /** `start` makes a worker that serves `parts`. */
  constructor(
    private readonly start: () => Helper<Wanted, Part>,
    private readonly parts: (wanted: Wanted) => Iterable<Part>,
  ) {}

  /** Calls `tell` with each part, until all are there or another thing is asked for. */
  ask(wanted: Wanted, tell: (part: Part) => void): void {
    this.giveUp();
    const asked = { id: this.#count++, wanted, tell };
    this.#asked = asked;
    try {
      this.#helper ??= this.#begin();
      this.#helper.postMessage({ id: asked.id, wanted });
    } catch {
      this.#makeHere();
    }
  }

  /** Nothing more comes of what is being made. */
  giveUp(): void {
    if (!this.#asked) return;
    this.#asked = null;
    this.#end();
  }

  /** Ends the worker too, where nothing is being made. */
  close(): void {
    this.#asked = null;
    this.#end();
  }

  #end(): void {
    this.#helper?.terminate();
    this.#helper = null;
  }

  #begin(): Helper<Wanted, Part> {
    const helper = this.start();
    helper.onmessage = ({ data: { id, part } }) => {
      const asked = this.#asked;
      if (asked?.id !== id) return;
      if (part === null) this.#asked = null;
      else asked.tell(part);
    };
    helper.onerror = () => {
      if (this.#helper !== helper) return;
      this.#end();
      this.#makeHere();
    };
    return helper;
  }

  #makeHere(): void {
    const asked = this.#asked;
    if (!asked) return;
    const parts = this.parts(asked.wanted)[Symbol.iterator]();
    const next = (): void => {
      if (this.#asked !== asked) return;
      const part = parts.next();
      if (part.done === true) {
        this.#asked = null;
        return;
      }
      asked.tell(part.value);
      setTimeout(next);
    };
    next();
  }
}
