export * from './colour-order.ts';
export * from './kinds.ts';
export * from './model.ts';
