/** The cells that a photo left in doubt, on the Motif bench. */
import { numbers as n } from './numbers.ts';

const cell = (column: number, row: number, yarn: string, sure: number): string =>
  `Row ${row + 1}, stitch ${column + 1}: ${yarn}, ${n.percent(sure)} sure`;

export const doubts = {
  title: (cells: number): string => (cells === 0 ? 'Cells to settle' : `${n.count(cells, 'cell')} to settle`),
  about:
    'The photo left them in doubt; diamonds mark them on the chart. Say which yarn each is, or that it is right as read, or paint it.',
  list: 'Cells to settle',
  help: (hasDigits: boolean): string =>
    `Up and down arrow go from cell to cell. Enter: it is right as read.${hasDigits ? ' 1 to 9 say which yarn it is.' : ''}`,
  cell,
  enlarged: (column: number, row: number): string => `Row ${row + 1}, stitch ${column + 1} in the photo, enlarged`,
  listed: (first: number, count: number, of: number): string => `${first + 1} to ${first + count} of ${of} are listed.`,
  isYarn: 'This cell is',
  asRead: 'Right as read',
  all: 'All are right as read',
  back: 'Ask again about the last',
  letGo: 'Ask no more',
  /** Announced where one is gone to. */
  at: (at: number, of: number, column: number, row: number, yarn: string, sure: number): string =>
    `${at} of ${of}: ${cell(column, row, yarn, sure)}.`,
  /** A cell of the chart, to assistive technology. */
  marked: (cell: string): string => `${cell}, in doubt`,
  lost: 'The chart was cut or resized since, so which cells they are is not known any more. Undo brings their marks back.',
  none: 'No cell is to be settled.',
  done: 'Every cell is settled.',
  notHere: 'The cell at the cursor is not one to settle.',
  /** After the sentence that the chart was read. */
  taken: (read: string, cells: number): string => `${read} ${n.count(cells, 'cell')} to settle.`,
};
