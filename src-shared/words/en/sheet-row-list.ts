/** The row list on the placement sheet. */
import { label, regularRuns, type Run } from '../../bed/index.ts';
import { rich, strong, type Rich } from '../rich.ts';
import { numbers as n } from './numbers.ts';

/** More runs of needles than this are told by what comes again among them. */
const MOST_RUNS = 12;

export const sheetRowList = {
  title: 'Row list',
  about:
    'Row n is the row that brings the counter to n. What stands beside it is done before it, when the counter reads one less; where the carriage is, it is before the row. Needles not named knit main. Checks, strands and balls that are laid stand in the steps.',
  columns: {
    done: 'Done',
    row: 'Row',
    from: 'Carriage at',
    before: 'Before the row',
    needles: 'Needles in contrast',
    wrap: 'Wrap',
  },
  needlesIn: (yarn: string): string => `Needles in ${yarn}`,
  plain: 'plain',
  /** Of rows that come again: what they are like, and where each time begins. */
  as: ({ first, last }: { readonly first: number; readonly last: number }): string => `as ${n.rowSpan(first, last)}`,
  /** What follows the last row. */
  end: 'end',
  begin: (readings: readonly number[]): string =>
    `The same again, beginning when the counter reads ${n.list(readings.map(String))}.`,
  /** `L48–L40, L38`; many of them are told by what comes again: `L48, L46–L45, and so on every 6 needles up to R47`. */
  runs(runs: readonly Run[]): string {
    const each = (some: readonly Run[]): string => some.map(n.run).join(', ');
    if (runs.length <= MOST_RUNS) return each(runs);
    return regularRuns(runs)
      .map((told) =>
        told.kind === 'runs'
          ? each(told.runs)
          : `${each(told.runs)}, and so on every ${n.needles(told.every)} up to ${label(told.last)}`,
      )
      .join('; ');
  },
  ofYarn: (yarn: string, runs: string): Rich => rich`${strong(`${yarn}:`)} ${runs}`,
};
