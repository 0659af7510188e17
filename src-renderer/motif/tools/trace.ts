import type { Tool } from './tool.ts';

/** Moves the picture that lies behind the chart to be traced. */
export const trace: Tool = { key: 'U', kind: 'trace' };
