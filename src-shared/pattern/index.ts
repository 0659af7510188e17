export * from './kinds.ts';
export * from './model.ts';
