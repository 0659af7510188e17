export * from './chains.ts';
export * from './held.ts';
export * from './lifts.ts';
export * from './mend.ts';
