import type { Tool } from './tool.ts';

/** Takes the yarn of a cell into the pen. */
export const pickColour: Tool = { key: 'I', kind: 'pick' };
