/** Where two photos of one chart meet. */
import { overlapsOf } from '@shared/reading/index.ts';
import type { Job } from './table.ts';

export const joinJob: Job<'join'> =
  ({ first, second, by }) =>
  () =>
    overlapsOf(first, second, by);
