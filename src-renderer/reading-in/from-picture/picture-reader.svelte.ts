/** Has a picture turned into cells, always for the latest options. */
import type { Problem } from '@shared/problem/index.ts';
import type { Picture, PictureMotif, PictureOptions, Progress } from '@shared/reading/index.ts';
import { copiedPicture } from '../../pictures/copied.ts';
import { WorkerClient, type Helper } from '../../worker/index.ts';

export type ReaderState =
  | { readonly kind: 'working'; readonly progress: Progress | null }
  | { readonly kind: 'done' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'problem'; readonly problem: Problem };

export class PictureReader {
  state = $state.raw<ReaderState>({ kind: 'stopped' });
  /** What was read last; it may be older than the options while the state is not `done`. */
  motif = $state.raw<PictureMotif | null>(null);
  readonly #client: WorkerClient<'picture'>;

  /** `start` makes a worker, where it is not the program's own. */
  constructor(
    private readonly picture: Picture,
    start?: () => Promise<Helper<'picture'>>,
  ) {
    this.#client = new WorkerClient('picture', null, start, copiedPicture);
  }

  /** Begins anew with other options; what is still under way for earlier ones is dropped. */
  read(options: PictureOptions): void {
    this.state = { kind: 'working', progress: null };
    this.#client.ask(this.picture, options, {
      progress: (progress) => (this.state = { kind: 'working', progress }),
      answer: (motif) => {
        this.motif = motif;
        this.state = { kind: 'done' };
      },
      failed: (problem) => (this.state = { kind: 'problem', problem }),
    });
  }

  /** Stops; what was read before stays to be looked at. */
  stop(): void {
    this.#client.stop();
    this.state = { kind: 'stopped' };
  }

  close(): void {
    this.#client.close();
  }
}
