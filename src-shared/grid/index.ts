export * from './grid.ts';
export * from './patch.ts';
export * from './draw.ts';
