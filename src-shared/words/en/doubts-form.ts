/** The list of cells that a photo left in doubt, beside the chart. */
import { numbers as n } from './numbers.ts';

export const doubtsForm = {
  title: (cells: number): string => (cells === 0 ? 'Cells to settle' : `${n.count(cells, 'cell')} to settle`),
  about:
    'The photo left them in doubt; diamonds mark them on the chart. Say which yarn each is, or that it is right as read, or paint it.',
  list: 'Cells to settle',
  help: (hasDigits: boolean): string =>
    `Up and down arrow go from cell to cell. Enter: it is right as read.${hasDigits ? ' 1 to 9 say which yarn it is.' : ''}`,
  enlarged: (column: number, row: number): string => `Row ${row + 1}, stitch ${column + 1} in the photo, enlarged`,
  listed: (first: number, count: number, of: number): string => `${first + 1} to ${first + count} of ${of} are listed.`,
  isYarn: 'This cell is',
  asRead: 'Right as read',
  all: 'All are right as read',
  back: 'Ask again about the last',
  letGo: 'Ask no more',
  lost: 'The chart was cut or resized since, so which cells they are is not known any more. Undo brings their marks back.',
};
