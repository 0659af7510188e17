/**
 * Shaping row by row, as a knitter writes it down: one row a line,
 *
 *     row 12: +1 at each edge
 *     row 40: -4 at the left
 *     row 44: -2 at the left, -1 at the right
 *
 * Left and right are the knitter's, facing the machine. Stitches come and go at
 * the edges alone: a neck that divides a piece leaves two sides, each with its
 * own row counter and carriage, which one list of rows cannot tell. A line that
 * tries is refused with what to do instead.
 */
import { problemError } from '../problem/index.ts';
import { FIRST_SHAPED_ROW, type EdgeStep } from './shape-model.ts';

/** The lines of the steps, in their order. */
export function stepsToText(steps: readonly EdgeStep[]): string {
  return steps.map(({ row, left, right }) => `row ${row}: ${edgesToText(left, right)}`).join('\n');
}

function edgesToText(left: number, right: number): string {
  const said = (stitches: number): string => (stitches > 0 ? `+${stitches}` : `${stitches}`);
  if (left === right) return `${said(left)} at each edge`;
  const parts = [left === 0 ? '' : `${said(left)} at the left`, right === 0 ? '' : `${said(right)} at the right`];
  return parts.filter((part) => part !== '').join(', ');
}

/**
 * Reads lines, which may stand in any order; empty ones are passed over, and
 * `;` ends a line too. Gives the steps in the order of their rows. Throws
 * `steps-line-unclear` or `steps-line-divides` (with the line),
 * `steps-row-is-cast-on`, `steps-row-twice` or `steps-edge-twice`.
 */
export function stepsFromText(text: string): EdgeStep[] {
  const steps = new Map<number, EdgeStep>();
  for (const line of text.split(/[\n;]/)) {
    if (line.trim() === '') continue;
    const step = stepFromLine(line.trim());
    if (step.row < FIRST_SHAPED_ROW) throw problemError('steps-row-is-cast-on', { row: step.row });
    if (steps.has(step.row)) throw problemError('steps-row-twice', { row: step.row });
    steps.set(step.row, step);
  }
  return [...steps.values()].sort((a, b) => a.row - b.row);
}

const LINE = /^row\s+(\d{1,4})\s*:\s*(.+)$/i;
const CHANGE =
  /^([+\-\u2212])\s*([1-9]\d{0,2})(?:\s+st(?:itch(?:es)?)?)?\s+at\s+(?:the\s+)?(each|both|left|right)(?:\s+edges?)?$/i;

/** What knitters call the stitches between the edges, and parting them. */
const INSIDE = /\b(?:middle|cent(?:re|er)(?:ed)?|neck(?:line)?|inside|opening|hole|slit|divid(?:e|es|ed|ing)|split)\b/i;

function unclear(line: string): Error {
  return problemError(INSIDE.test(line) ? 'steps-line-divides' : 'steps-line-unclear', { line });
}

function stepFromLine(line: string): EdgeStep {
  const [, row, changes] = LINE.exec(line) ?? [];
  if (row === undefined || changes === undefined) throw unclear(line);
  const at: { left: number | null; right: number | null } = { left: null, right: null };
  for (const change of changes.split(',')) {
    const [, sign, digits, edge] = CHANGE.exec(change.trim()) ?? [];
    if (edge === undefined) throw unclear(line);
    const stitches = Number(digits) * (sign === '+' ? 1 : -1);
    for (const side of ['left', 'right'] as const) {
      if (edge.toLowerCase() === (side === 'left' ? 'right' : 'left')) continue;
      if (at[side] !== null) throw problemError('steps-edge-twice', { row: Number(row), side });
      at[side] = stitches;
    }
  }
  return { row: Number(row), left: at.left ?? 0, right: at.right ?? 0 };
}
