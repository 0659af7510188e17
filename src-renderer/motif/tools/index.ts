/** The tools, in the order in which they lie on the bench. */
import { ellipse } from './ellipse.ts';
import { eraser } from './eraser.ts';
import { fill } from './fill.ts';
import { pen } from './pen.ts';
import { pickColour } from './pick-colour.ts';
import { rectangle } from './rectangle.ts';
import { select } from './select.ts';
import { stamp } from './stamp.ts';
import { straightLine } from './straight-line.ts';
import { trace } from './trace.ts';
import type { Tool } from './tool.ts';

export type ToolName =
  'draw' | 'erase' | 'line' | 'rectangle' | 'ellipse' | 'fill' | 'pick' | 'select' | 'stamp' | 'trace';

export const TOOLS: { readonly [Name in ToolName]: Tool } = {
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
};

export const TOOL_NAMES = Object.keys(TOOLS) as readonly ToolName[];

export type { Drawing, Tool } from './tool.ts';
