import { boxBetween, ellipseCells } from '@shared/grid/index.ts';
import { followedBy } from '../editing/following.ts';
import { paintChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** The ellipse in the box between two corners, outlined or filled. */
export const ellipse: Tool = {
  kind: 'span',
  canFill: true,
  change: ({ motif, colour, following, isFilled }, from, to) => {
    const cells = ellipseCells(boxBetween(from, to), isFilled);
    return paintChange(motif, 'ellipse', colour, followedBy(motif.grid, cells, following));
  },
};
