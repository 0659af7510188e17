export type * from './types.ts';
export * from './limit.ts';
export * from './floats.ts';
export * from './lay-again.ts';
export * from './drawn-floats.ts';
export * from './carries.ts';
export * from './wraps.ts';
export * from './loose.ts';
export * from './mending/index.ts';
