export { inWorker, type Limit, type Waiting } from './in-worker.ts';
export { answerOnce } from './answering.ts';
export type { ThreadEntry } from './thread-entry.ts';
