export * from './matching.ts';
export * from './fits.ts';
