export * from './lying.ts';
export * from './float-lengths.ts';
