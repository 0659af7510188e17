export * from './types.ts';
export * from './limit.ts';
export * from './lay.ts';
export * from './carries.ts';
export * from './wraps.ts';
export * from './wrap-strands.ts';
export * from './findings/index.ts';
