/** Has a picture turned into cells by a worker, always for the latest options. */
import { problemOf, type Problem } from '@shared/problem/index.ts';
import type { Picture, PictureMotif, PictureOptions, Progress } from '@shared/reading/index.ts';
import type { Answered, Asked } from './messages.ts';

export type ReaderState =
  | { readonly kind: 'working'; readonly progress: Progress | null }
  | { readonly kind: 'done' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** A worker, as far as it is used here. */
export type Helper = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

export class PictureReader {
  state = $state.raw<ReaderState>({ kind: 'stopped' });
  /** What was read last; it may be older than the options while the state is not `done`. */
  motif = $state.raw<PictureMotif | null>(null);
  #job = 0;
  readonly #helper: Helper;

  constructor(picture: Picture, helper: Helper) {
    this.#helper = helper;
    helper.addEventListener('message', (event) => this.#take((event as MessageEvent<Answered>).data));
    helper.addEventListener('error', (event) => {
      const thrown = (event as ErrorEvent).error ?? new Error((event as ErrorEvent).message);
      this.state = { kind: 'problem', problem: problemOf(thrown) };
    });
    this.#ask({ kind: 'picture', picture: { width: picture.width, height: picture.height, rgba: picture.rgba } });
  }

  /** Begins anew with other options; what is still under way for earlier ones is dropped. */
  read(options: PictureOptions): void {
    this.state = { kind: 'working', progress: null };
    this.#ask({ kind: 'read', job: ++this.#job, options });
  }

  /** Stops; what was read before stays to be looked at. */
  stop(): void {
    this.#job++;
    this.state = { kind: 'stopped' };
    this.#ask({ kind: 'stop' });
  }

  close(): void {
    this.#helper.terminate();
  }

  #take(answered: Answered): void {
    if (answered.job !== this.#job) return;
    switch (answered.kind) {
      case 'progress':
        this.state = { kind: 'working', progress: answered.progress };
        break;
      case 'read':
        this.motif = answered.motif;
        this.state = { kind: 'done' };
        break;
      case 'problem':
        this.state = { kind: 'problem', problem: answered.problem };
    }
  }

  #ask(asked: Asked): void {
    this.#helper.postMessage(asked);
  }
}
