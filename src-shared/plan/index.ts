export type * from './types.ts';
export * from './plan.ts';
export * from './figure.ts';
export * from './memo.ts';
export * from './stitch.ts';
export * from './strands-to-cut.ts';
export * from './balls-to-wind.ts';
export * from './garment-yarn.ts';
export * from './running-order/index.ts';
