import type { Tool } from './tool.ts';

/** Selects a box of cells; dragging what is selected moves it. */
export const select: Tool = { key: 'S', kind: 'select' };
