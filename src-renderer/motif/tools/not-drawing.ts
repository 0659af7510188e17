/** The tools that change no cell by themselves: the bench does what they ask for. */
import type { Tool } from './tool.ts';

/** Takes the yarn of a cell into the pen. */
export const pickColour: Tool = { kind: 'pick' };

/** Selects a box of cells; dragging what is selected moves it. */
export const select: Tool = { kind: 'select' };

/** Lays copies of another motif of the project. */
export const stamp: Tool = { kind: 'stamp' };

/** Moves the picture that lies behind the chart to be traced. */
export const trace: Tool = { kind: 'trace' };
