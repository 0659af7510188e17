/** The script of the worker, one for every job. */
import { jobs } from './jobs/index.ts';
import { serve, type Port } from './serve.ts';

serve(jobs, self as unknown as Port);
