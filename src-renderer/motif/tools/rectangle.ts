import { boxBetween, rectangleCells } from '@shared/grid/index.ts';
import { followedBy } from '../editing/following.ts';
import { paintChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** The rectangle between two corners, outlined or filled. */
export const rectangle: Tool = {
  kind: 'span',
  canFill: true,
  change: ({ motif, colour, following, isFilled }, from, to) => {
    const cells = rectangleCells(boxBetween(from, to), isFilled);
    return paintChange(motif, 'rectangle', colour, followedBy(motif.grid, cells, following));
  },
};
