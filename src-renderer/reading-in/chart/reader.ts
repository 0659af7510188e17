/** The window's side of the worker: questions go out, and only the answer to the latest one comes in. */
import type { Problem } from '@shared/problem/index.ts';
import type { Picture, Progress } from '@shared/reading/index.ts';
import type { Answer, Question } from './answer.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import ReadingWorker from './worker.ts?worker&inline';

export interface ReaderListener {
  progress(progress: Progress): void;
  answer(answer: Answer): void;
  problem(problem: Problem): void;
}

export class Reader {
  readonly #worker = new ReadingWorker();
  #asked = 0;

  constructor(picture: Picture, listener: ReaderListener) {
    this.#worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (data.id !== this.#asked) return;
      if (data.kind === 'progress') listener.progress(data.progress);
      else if (data.kind === 'answer') listener.answer(data.answer);
      else listener.problem(data.problem);
    });
    this.#worker.addEventListener('error', ({ message }) => {
      listener.problem({ code: 'unexpected', where: null, facts: { detail: message } });
    });
    const { width, height, rgba } = picture;
    this.#send({ kind: 'photo', picture: { width, height, rgba } });
  }

  ask(question: Question): void {
    this.#send({ kind: 'ask', id: ++this.#asked, question });
  }

  /** Gives up the question that is out; its answer will not come. */
  stop(): void {
    this.#asked++;
    this.#send({ kind: 'stop' });
  }

  close(): void {
    this.#worker.terminate();
  }

  #send(message: ToWorker): void {
    this.#worker.postMessage(message);
  }
}
