/** A piece that the bed does not hold: where it leaves the bed, and what can be done. */
export * from './beyond.ts';
export * from './coarser.ts';
export * from './panels.ts';
