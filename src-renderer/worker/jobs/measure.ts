import { measure } from '@shared/motif/repeat/index.ts';
import type { Job } from './table.ts';

/** In one step: whoever no longer wants it ends the worker. */
export const measureJob: Job<'measure'> =
  ({ grid, ground }) =>
  () => ({ next: () => ({ done: true, value: measure(grid, ground) }) });
