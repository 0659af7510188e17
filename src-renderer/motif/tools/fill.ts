import { fillChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** Gives an area of one colour the yarn in the pen. */
export const fill: Tool = {
  kind: 'spot',
  change: ({ motif, colour, fillsEverywhere }, cell) => fillChange(motif, colour, cell, fillsEverywhere),
};
