import { lineCells } from '@shared/grid/index.ts';
import { followedBy } from '../editing/following.ts';
import { paintChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** A straight line from end to end. */
export const straightLine: Tool = {
  kind: 'span',
  canFill: false,
  change: ({ motif, colour, following }, from, to) =>
    paintChange(motif, 'line', colour, followedBy(motif.grid, lineCells(from, to), following)),
};
