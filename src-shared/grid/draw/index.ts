export * from './cell.ts';
export * from './line.ts';
export * from './box.ts';
export * from './fill.ts';
export * from './symmetry.ts';
export * from './copies.ts';
