/** The tools, in the order in which they lie on the bench. */
import { ellipse } from './ellipse.ts';
import { eraser } from './eraser.ts';
import { fill } from './fill.ts';
import { pen } from './pen.ts';
import { pickColour, select, stamp, trace } from './not-drawing.ts';
import { rectangle } from './rectangle.ts';
import { straightLine } from './straight-line.ts';
import type { Tool } from './tool.ts';

export const TOOLS = {
  draw: pen,
  erase: eraser,
  line: straightLine,
  rectangle,
  ellipse,
  fill,
  pick: pickColour,
  select,
  stamp,
  trace,
} satisfies Readonly<Record<string, Tool>>;

export type ToolName = keyof typeof TOOLS;

export const TOOL_NAMES = Object.keys(TOOLS) as readonly ToolName[];

export type { Drawing, Tool } from './tool.ts';
