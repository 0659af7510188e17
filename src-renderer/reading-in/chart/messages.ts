/** What the window and the worker that reads say to each other. */
import type { Problem } from '@shared/problem/index.ts';
import type { Picture, Progress } from '@shared/reading/index.ts';
import type { Answer, Question } from './answer.ts';

export type ToWorker =
  | { readonly kind: 'photo'; readonly picture: Picture }
  | { readonly kind: 'ask'; readonly id: number; readonly question: Question }
  /** The question that is being worked on is given up. */
  | { readonly kind: 'stop' };

export type FromWorker =
  | { readonly kind: 'progress'; readonly id: number; readonly progress: Progress }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: Answer }
  | { readonly kind: 'problem'; readonly id: number; readonly problem: Problem };
