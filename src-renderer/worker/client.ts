/**
 * The window's side: has one kind of work done by a worker, always for the
 * latest question.
 *
 * Who asks again or stops gives up the question before, of which nothing more
 * is told. A worker lets go of it between two steps; one that does not in time
 * is ended. Where a worker cannot be had or dies, the window works by itself, a
 * little at a time, if it knows how; the next question has a new worker.
 */
import { problemOf, type Problem } from '@shared/problem/index.ts';
import { inSlices } from './in-slices.ts';
import type { Job, JobName, Jobs } from './jobs/table.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { startWorker } from './start.ts';

/** A busy worker is ended that has not let go of a question after so long. */
const PATIENCE_MS = 100;

/** What is needed of a `Worker`. */
export interface Helper<Name extends JobName> {
  postMessage(message: ToWorker<Name>, transfer?: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker<Name>>) => unknown) | null;
  onmessageerror: ((event: MessageEvent) => unknown) | null;
  onerror: ((event: ErrorEvent) => unknown) | null;
}

/** What a worker is given, with what of it moves there without being copied. */
export interface HandedOver<Given> {
  readonly value: Given;
  readonly transfer: Transferable[];
}

export interface Listener<Name extends JobName> {
  /** All parts come before the answer; from the first on again where a worker died. */
  part?(part: Jobs[Name]['part']): void;
  progress?(progress: Jobs[Name]['progress']): void;
  answer(answer: Jobs[Name]['answer']): void;
  /** Nothing comes of it, by worker or window. */
  failed(problem: Problem): void;
}

interface Question<Name extends JobName> extends Listener<Name> {
  readonly id: number;
  readonly given: Jobs[Name]['given'];
  readonly ask: Jobs[Name]['ask'];
}

export class WorkerClient<Name extends JobName> {
  #helper: Helper<Name> | null = null;
  #isStarting = false;
  /** Of a client that was closed meanwhile, a worker that starts is not wanted. */
  #starts = 0;
  /** What the worker was given last. */
  #held: Jobs[Name]['given'] | null = null;
  #isOpened = false;
  #question: Question<Name> | null = null;
  #count = 0;
  #patience: ReturnType<typeof setTimeout> | undefined;

  /** What is being copied for the worker. */
  #copied: Jobs[Name]['given'] | null = null;

  /**
   * `job` is how the window does it without a worker, null where that would make the page too large; `start` makes
   * one; `copy` makes what can be handed over of what is given, where to send it at once would hold up the window.
   */
  constructor(
    private readonly name: Name,
    private readonly job: Job<Name> | null,
    private readonly start: () => Promise<Helper<Name>> = startWorker as () => Promise<Helper<Name>>,
    private readonly copy: ((given: Jobs[Name]['given']) => Promise<HandedOver<Jobs[Name]['given']>>) | null = null,
  ) {}

  /** The same `given`, as an object, is sent to the worker once. */
  ask(given: Jobs[Name]['given'], ask: Jobs[Name]['ask'], listener: Listener<Name>): void {
    if (this.#question) this.#awaitRelease(given);
    // A listener may be an object with methods of its own.
    this.#question = {
      id: this.#count++,
      given,
      ask,
      part: (part) => listener.part?.(part),
      progress: (progress) => listener.progress?.(progress),
      answer: (answer) => listener.answer(answer),
      failed: (problem) => listener.failed(problem),
    };
    this.#send();
  }

  /** Nothing more comes of what was asked. */
  stop(): void {
    if (!this.#question) return;
    this.#helper?.postMessage({ kind: 'stop', id: this.#question.id });
    this.#awaitRelease(this.#question.given);
    this.#question = null;
  }

  /** Ends the worker too, and with it what was given. */
  close(): void {
    this.#question = null;
    this.#end();
  }

  /** The worker has so long to let go of its question. What it opens for the next one as well it may open to the end. */
  #awaitRelease(next: Jobs[Name]['given']): void {
    // Of what is still copied nothing was asked yet.
    if (!this.#helper || next === this.#copied || (!this.#isOpened && next === this.#held)) return;
    this.#patience ??= setTimeout(() => {
      this.#end();
      this.#send();
    }, PATIENCE_MS);
  }

  #heard(): void {
    clearTimeout(this.#patience);
    this.#patience = undefined;
  }

  #end(): void {
    this.#heard();
    this.#starts++;
    this.#isStarting = false;
    this.#helper?.terminate();
    this.#helper = null;
    this.#held = null;
    this.#copied = null;
  }

  #send(): void {
    const question = this.#question;
    if (!question || this.#isStarting) return;
    if (!this.#helper) {
      void this.#begin();
      return;
    }
    const { given } = question;
    if (given === this.#held) this.#post(question, null);
    else if (!this.copy) this.#post(question, { value: given, transfer: [] });
    else if (given !== this.#copied) void this.#sendCopy(given, this.copy(given));
  }

  /** Whatever is asked last of what is copied meanwhile. */
  async #sendCopy(given: Jobs[Name]['given'], copy: Promise<HandedOver<Jobs[Name]['given']>>): Promise<void> {
    this.#copied = given;
    const helper = this.#helper;
    const isWanted = (): boolean => this.#helper === helper && this.#copied === given;
    try {
      const handed = await copy;
      if (!isWanted()) return;
      this.#copied = null;
      if (this.#question?.given === given) this.#post(this.#question, handed);
    } catch (thrown) {
      // There is no room for it twice.
      if (isWanted()) this.#lost(thrown);
    }
  }

  #post({ id, given, ask }: Question<Name>, handed: HandedOver<Jobs[Name]['given']> | null): void {
    try {
      this.#helper?.postMessage(
        { kind: 'ask', id, job: this.name, given: handed && { value: handed.value }, ask },
        handed?.transfer ?? [],
      );
      if (given !== this.#held) this.#isOpened = false;
      this.#held = given;
    } catch (thrown) {
      this.#lost(thrown);
    }
  }

  async #begin(): Promise<void> {
    const start = ++this.#starts;
    this.#isStarting = true;
    try {
      const helper = await this.start();
      if (start !== this.#starts) {
        helper.terminate();
        return;
      }
      this.#helper = helper;
      helper.onmessage = ({ data }) => this.#hear(data);
      const died = (why: unknown): void => {
        if (this.#helper === helper) this.#lost(why);
      };
      helper.onerror = ({ error, message }) => died(error ?? new Error(message));
      helper.onmessageerror = () => died(new Error('The answer of a worker could not be read'));
    } catch (thrown) {
      if (start === this.#starts) this.#lost(thrown);
      return;
    }
    this.#isStarting = false;
    this.#send();
  }

  #hear(data: FromWorker<Name>): void {
    if (data.kind === 'ended') this.#heard();
    else if (data.kind === 'opened') this.#isOpened = true;
    const question = this.#question;
    if (question?.id !== data.id) return;
    switch (data.kind) {
      case 'part':
        question.part?.(data.part);
        break;
      case 'progress':
        question.progress?.(data.progress);
        break;
      case 'ended':
        this.#settle(question, data.outcome);
    }
  }

  #settle(question: Question<Name>, outcome: (FromWorker<Name> & { kind: 'ended' })['outcome']): void {
    // Who hears the answer may ask again.
    if (this.#question === question) this.#question = null;
    if (outcome?.ok === true) question.answer(outcome.value);
    else if (outcome) question.failed(outcome.problem);
  }

  /** There is no worker: what is asked is done here, or fails with the reason. */
  #lost(reason: unknown): void {
    this.#end();
    const { job } = this;
    const question = this.#question;
    if (!question) return;
    if (!job) {
      this.#settle(question, { ok: false, problem: problemOf(reason) });
      return;
    }
    const begin = (): ReturnType<ReturnType<Job<Name>>> =>
      job(question.given)(question.ask, (part) => question.part?.(part)) as ReturnType<ReturnType<Job<Name>>>;
    const isWanted = (): boolean => this.#question === question;
    void inSlices(begin, isWanted, (progress) => question.progress?.(progress)).then((outcome) => {
      if (isWanted()) this.#settle(question, outcome);
    });
  }
}
