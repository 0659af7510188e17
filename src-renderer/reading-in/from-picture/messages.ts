/** What is said between the dialog and the worker that turns pictures into cells. */
import type { Problem } from '@shared/problem/index.ts';
import type { Picture, PictureMotif, PictureOptions, Progress } from '@shared/reading/index.ts';

/** `job` counts up; an answer to any but the last one is stale. */
export type Asked =
  | { readonly kind: 'picture'; readonly picture: Picture }
  | { readonly kind: 'read'; readonly job: number; readonly options: PictureOptions }
  | { readonly kind: 'stop' };

export type Answered = { readonly job: number } & (
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'read'; readonly motif: PictureMotif }
  | { readonly kind: 'problem'; readonly problem: Problem }
);
