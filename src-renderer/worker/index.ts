export * from './client.ts';
export type * from './jobs/table.ts';
