export * from './client.ts';
export type * from './jobs/table.ts';
export { startWorker } from './start.ts';
