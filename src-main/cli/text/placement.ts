/** The ranked placings for people. */
import type { PlacementChoice, Spaces } from '@shared/placement/index.ts';
import { words } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import { table, under } from './table.ts';

/** `findings`: sentences about where the piece stands. */
export function placementText(choices: readonly PlacementChoice[], findings: readonly string[]): string {
  const { columns, count, why } = terminalWords.cli.place;
  const rank = (choice: PlacementChoice): number => choices.indexOf(choice) + 1;
  const groups = ({ groups }: PlacementChoice): string =>
    groups.map(({ block }) => words.numbers.run(block)).join('  ');
  return [
    count(choices.length),
    '',
    ...table(choices, [
      { title: columns.choice, cell: (choice) => `${rank(choice)}`, isNumber: true },
      { title: columns.groups, cell: groups },
      { title: columns.figure, cell: (choice) => spaces(choice.figure) },
      { title: columns.blocks, cell: (choice) => spaces(choice.blocks) },
      { title: columns.acrossSeam, cell: (choice) => `${choice.acrossSeam}`, isNumber: true },
      { title: columns.imbalance, cell: (choice) => `${choice.imbalance}`, isNumber: true },
      { title: columns.fromRule, cell: (choice) => `${choice.fromRule}`, isNumber: true },
    ]),
    '',
    ...choices.map((choice) => why(rank(choice), words.placement.why(choice))),
    ...(findings.length > 0 ? ['', under(terminalWords.cli.plan.findingsTitle, findings)] : []),
  ].join('\n');
}

/** `13 / 24 / 13`: margin, gaps, margin. */
function spaces({ margins, gaps }: Spaces): string {
  return [margins[0], ...gaps, margins[1]].join(' / ');
}
