export * from './contrast.ts';
export * from './legible.ts';
