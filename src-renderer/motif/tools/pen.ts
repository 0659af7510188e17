import { strokeChange } from '../editing/strokes.ts';
import type { Tool } from './tool.ts';

/** Lays the yarn in the pen, freehand. */
export const pen: Tool = {
  kind: 'stroke',
  change: ({ motif, colour, following }, cells) => strokeChange(motif, 'draw', colour, cells, following),
};
