export * from './types.ts';
export * from './on-bed.ts';
export * from './plan.ts';
export * from './stitch.ts';
