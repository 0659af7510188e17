export * from './model.ts';
export * from '../motif/index.ts';
export * from '../pattern/index.ts';
export type { Bed } from '../bed/index.ts';
export type { FloatLimit, Piece, Size, SizeNumbers, Sizes } from '../piece/index.ts';
