/** The cells that a photo left in doubt, as they are gone to on the chart. */
import { numbers as n } from './numbers.ts';

const cell = (column: number, row: number, yarn: string, sure: number): string =>
  `Row ${row + 1}, stitch ${column + 1}: ${yarn}, ${n.percent(sure)} sure`;

export const doubts = {
  cell,
  /** Announced where one is gone to. */
  at: (at: number, of: number, column: number, row: number, yarn: string, sure: number): string =>
    `${at} of ${of}: ${cell(column, row, yarn, sure)}.`,
  /** A cell of the chart, to assistive technology. */
  marked: (cell: string): string => `${cell}, in doubt`,
  none: 'No cell is to be settled.',
  done: 'Every cell is settled.',
  notHere: 'The cell at the cursor is not one to settle.',
};
