export * from './model.ts';
export { gridToText } from './lines.ts';
export * from './grid.ts';
export * from './transform.ts';
export * from './patch.ts';
export * from './painted-rows.ts';
export * from './draw/index.ts';
export type * from './problems.ts';
