export * from './bounds.ts';
export * from './border.ts';
export * from './repeat.ts';
export * from './lattice.ts';
export * from './blocks.ts';
export * from './near.ts';
export * from './measure.ts';
export * from './trim.ts';
