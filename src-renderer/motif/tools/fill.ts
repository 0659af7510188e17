import { cellOnMotif } from '../editing/following.ts';
import { fillChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** Gives an area of one colour the yarn in the pen. */
export const fill: Tool = {
  kind: 'spot',
  change: ({ motif, colour, following, fillsEverywhere }, cell) => {
    const seed = cellOnMotif(motif.grid, cell, following);
    return seed && fillChange(motif, colour, seed, fillsEverywhere);
  },
};
