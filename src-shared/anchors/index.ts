export * from './in-copy.ts';
export * from './in-float.ts';
