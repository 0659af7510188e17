export * from './model.ts';
export * from './faces.ts';
export * from './slot.ts';
export * from './regular-runs.ts';
export type * from './problems.ts';
