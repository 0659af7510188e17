import { strokeChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** Lays the ground, freehand. */
export const eraser: Tool = {
  kind: 'stroke',
  change: ({ motif, ground, following }, cells) => strokeChange(motif, 'erase', ground, cells, following),
};
