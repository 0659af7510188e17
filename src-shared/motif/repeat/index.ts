export * from './bounds.ts';
export * from './border.ts';
export * from './repeat.ts';
export * from './lattice.ts';
export * from './near.ts';
export * from './many-yarns.ts';
export * from './trim.ts';
export * from './measure.ts';
