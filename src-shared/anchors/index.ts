export * from './in-copy.ts';
export * from './in-float.ts';
export * from './on-fabric.ts';
export type * from './types.ts';
export { chartCellAt, sayingOf, type ChartCell } from './by-hand.ts';
