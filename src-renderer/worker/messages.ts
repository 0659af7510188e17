/** What window and worker say to each other. `id` counts up; only the latest question is wanted. */
import type { Outcome } from '@shared/problem/index.ts';
import type { JobName, Jobs } from './jobs/table.ts';

export type ToWorker<Name extends JobName = JobName> =
  | {
      readonly kind: 'ask';
      readonly id: number;
      readonly job: Name;
      /** Null: what was given with an earlier question. */
      readonly given: { readonly value: Jobs[Name]['given'] } | null;
      readonly ask: Jobs[Name]['ask'];
    }
  | { readonly kind: 'stop'; readonly id: number };

export type FromWorker<Name extends JobName = JobName> =
  /** What was given is opened: from here on the work can be given up between two steps. */
  | { readonly kind: 'opened'; readonly id: number }
  | { readonly kind: 'part'; readonly id: number; readonly part: Jobs[Name]['part'] }
  | { readonly kind: 'progress'; readonly id: number; readonly progress: Jobs[Name]['progress'] }
  /** Null: it was given up, and the worker is free. */
  | { readonly kind: 'ended'; readonly id: number; readonly outcome: Outcome<Jobs[Name]['answer']> | null };
