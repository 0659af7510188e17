/**
 * Starts the script of a thread from source, as tests and `npm run dev` do.
 * A thread does not take over the loader of the process that starts it.
 */
import { register } from 'tsx/esm/api';

register();
await import(process.argv[2]);
