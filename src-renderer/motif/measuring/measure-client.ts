/**
 * Measures in a worker: one drawing at a time, the latest wins.
 *
 * Who asks for another drawing gives up the one before, whose answer is null;
 * a worker still busy with it is ended, since nothing it says is wanted.
 */
import type { Grid } from '@shared/grid/index.ts';
import { measure, type Measure } from '@shared/motif/repeat/index.ts';

export interface Question {
  readonly id: number;
  readonly grid: Grid;
  readonly ground: number;
}

export interface Answer {
  readonly id: number;
  readonly measure: Measure;
}

/** What is needed of a `Worker`. */
export interface Helper {
  postMessage(question: Question): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer>) => unknown) | null;
  onerror: ((event: ErrorEvent) => unknown) | null;
}

interface Asked extends Question {
  readonly promise: Promise<Measure | null>;
  readonly answer: (measured: Measure | null) => void;
}

export class MeasureClient {
  #helper: Helper | null = null;
  #asked: Asked | null = null;
  #count = 0;

  /** `start` makes a worker; where it throws or the worker fails, the page measures by itself. */
  constructor(private readonly start: () => Helper) {}

  /** The measure, or null if another drawing was asked for before it was there. */
  measure(grid: Grid, ground: number): Promise<Measure | null> {
    if (this.#asked?.grid === grid && this.#asked.ground === ground) return this.#asked.promise;
    this.giveUp();
    let answer: Asked['answer'] = () => undefined;
    const promise = new Promise<Measure | null>((resolve) => (answer = resolve));
    const asked: Asked = { id: this.#count++, grid, ground, promise, answer };
    this.#asked = asked;
    try {
      this.#helper ??= this.#begin();
      this.#helper.postMessage({ id: asked.id, grid, ground });
    } catch {
      this.#measureHere();
    }
    return promise;
  }

  /** Ends what is being measured; its answer is null. */
  giveUp(): void {
    if (!this.#asked) return;
    this.#helper?.terminate();
    this.#helper = null;
    this.#settle(null);
  }

  #begin(): Helper {
    const helper = this.start();
    helper.onmessage = ({ data }) => {
      if (data.id === this.#asked?.id) this.#settle(data.measure);
    };
    helper.onerror = () => {
      if (this.#helper !== helper) return;
      helper.terminate();
      this.#helper = null;
      this.#measureHere();
    };
    return helper;
  }

  #measureHere(): void {
    if (this.#asked) this.#settle(measure(this.#asked.grid, this.#asked.ground));
  }

  #settle(measured: Measure | null): void {
    const asked = this.#asked;
    this.#asked = null;
    asked?.answer(measured);
  }
}
