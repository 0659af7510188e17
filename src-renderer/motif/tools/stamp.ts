import type { Tool } from './tool.ts';

/** Lays copies of another motif of the project. */
export const stamp: Tool = { key: 'P', kind: 'stamp' };
