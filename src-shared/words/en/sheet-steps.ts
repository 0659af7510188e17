/** What a knitter does from the cast-on to the last row, step by step, on the sheet. */
import { label, type Slot } from '../../bed/index.ts';
import type { ShapingStep } from '../../piece/index.ts';
import type { Step } from '../../plan/index.ts';
import { fromMarked, rich, strong, type Rich } from '../rich.ts';
import { fill } from './fill.ts';
import { numbers as n } from './numbers.ts';
import { sections } from './sections.ts';

export function step(said: Step): Rich {
  switch (said.code) {
    case 'cast-on':
      return rich`Cast on ${strong(n.stitches(said.stitches))} in ${said.yarn} on needles ${strong(n.run(said.edges))}.`;
    case 'carriage':
      return rich`The carriage starts at the ${strong(said.side)}; set the row counter to ${strong(0)}.`;
    case 'end-needles':
      if (said.isAllOver) return allOver(said.isOn);
      return said.isOn
        ? rich`Leave end-needle selection ${strong('on')}: the contrast is carried to both edges on every pattern row.`
        : rich`Switch end-needle selection ${strong('off')}, or the contrast floats to the edges.`;
    case 'first-needles':
      return firstNeedles(said.first, said.isMirrored);
    case 'fill':
      return startOfFill(said);
    case 'plain':
      return rich`Knit plain in ${said.yarn} until the row counter stands at ${strong(said.until)}.`;
    case 'set-up':
      return rich`Set up with the row counter at ${strong(said.at)}, the carriage at the ${said.from}: row ${said.at + 1} is knitted plain while the needles for row ${strong(said.firstRow)} are selected.`;
    case 'by-hand':
      return rich`No row comes before the pattern: select the needles of row ${strong(said.firstRow)} by hand.`;
    case 'pattern':
      return rich`Knit ${strong(n.rowSpan(said.firstRow, said.lastRow))} in pattern with ${n.list(said.yarns)}${ownBalls(
        said.ownBalls,
      )}.${said.wraps > 0 ? ' Before each row, wrap the needle that the row list names.' : ''}`;
    case 'hem':
      return fromMarked(sections.step(said.note, said.row));
    case 'shaping':
      return shaping(said.steps);
    case 'finish':
      return rich`Knit plain until the row counter stands at ${strong(said.rows)}.`;
    case 'end':
      return rich`The piece ends with the row counter at ${strong(said.rows)}.`;
  }
}

function ownBalls(groups: readonly number[] | 'all'): Rich {
  if (groups === 'all') return rich`, ${strong('a ball of contrast for each group')}`;
  if (groups.length === 0) return rich``;
  const whose = `${groups.length === 1 ? 'group' : 'groups'} ${n.list(groups.map((group) => `${group + 1}`))}`;
  return rich`, ${strong(`a ball of contrast of its own for ${whose}`)}`;
}

/** An all-over pattern reaches the edges; whether the contrast is bound in there is the selection's doing. */
function allOver(isOn: boolean): Rich {
  return isOn
    ? rich`Leave end-needle selection ${strong('on')}: an all-over pattern needs the contrast bound in at both edges.`
    : rich`End-needle selection is ${strong('off')}: where the pattern ends short of an edge, the contrast is not bound in there. For an all-over pattern it is usually on.`;
}

function startOfFill(said: Extract<Step, { readonly code: 'fill' }>): Rich {
  const { motif, firstRow, first, width, step, isMirrored } = said;
  const start =
    first.length === 0
      ? rich`no copy starts on row ${strong(firstRow)}`
      : rich`on row ${strong(firstRow)} copies start ${strong(fill.needles(first, width))}`;
  const column = ` Column 1 of the chart lies on the ${isMirrored ? 'last' : 'first'} needle of each copy.`;
  return rich`Fill ${said.fill + 1}, ${motif}: ${start}.${fill.stepped(step, width)}${column}`;
}

function firstNeedles(first: readonly Slot[], isMirrored: boolean | null): Rich {
  const turned =
    isMirrored === null
      ? ''
      : isMirrored
        ? ' Column 1 of the chart lies on the last needle of each copy.'
        : ' Column 1 of the chart lies on the first needle of each copy.';
  const names = first.map(label);
  if (names.length === 1) return rich`The pattern starts at first needle ${strong(names[0] ?? '')}.${turned}`;
  if (names.length > MOST_NAMED) return rich`The groups start at the first needles in the table.${turned}`;
  return rich`The groups start at first needles ${strong(n.list(names))}.${turned}`;
}

/** More needles than this are read more easily in a table. */
const MOST_NAMED = 8;

function shaping(steps: readonly ShapingStep[]): Rich {
  const parts = steps.map(({ edge, stitches, row, every, times }, index): Rich => {
    const verb = `${stitches > 0 ? 'increase' : 'decrease'} ${n.stitches(Math.abs(stitches))} at ${n.edges[edge]}`;
    const often = every === 1 ? 'on every row' : `on every ${n.ordinal(every)} row`;
    const before = steps[index - 1];
    const isSame = before?.stitches === stitches && before.edge === edge;
    const when = times === 1 ? rich`on row ${strong(row)}` : rich`${often} ${strong(`${times} times`)}`;
    return rich`${isSame ? '' : `${verb} `}${when}`;
  });
  const spliced = parts.reduce<Rich>((sum, part, index) => {
    const between = index === 0 ? '' : steps[index - 1]?.edge === steps[index]?.edge ? ', then ' : '; ';
    return rich`${sum}${between}${part}`;
  }, []);
  return rich`All the way up, ${spliced}.`;
}
