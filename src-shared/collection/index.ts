export * from './alone.ts';
export * from './facts.ts';
export * from './find.ts';
export * from './put-in.ts';
export type * from './problems.ts';
