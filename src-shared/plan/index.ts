export type * from './types.ts';
export * from './plan.ts';
export * from './memo.ts';
export * from './notes.ts';
export type * from './hem-notes.ts';
export * from './stitch.ts';
export * from './steps.ts';
export * from './stages.ts';
export * from './strands-to-cut.ts';
