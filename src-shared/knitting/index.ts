export * from './types.ts';
export * from './on-bed.ts';
export * from './plan.ts';
export * from './memo.ts';
export * from './remedies.ts';
export * from './notes.ts';
export * from './csv.ts';
export * from './rowlist.ts';
