export type * from './types.ts';
export * from './munden.ts';
export * from './tex.ts';
export * from './loops.ts';
export * from './finishing.ts';
export * from './need.ts';
export * from './wrap-strands.ts';
