export * from './matching.ts';
