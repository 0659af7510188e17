/** What is written on the drawing of a piece, beside its spaces. */
import { numbers as n } from './numbers.ts';

export const pieceDrawing = {
  /** The longest float of each row, beside the row numbers. */
  profile: {
    title: 'longest floats',
    label: 'Longest floats, row by row',
    help: 'Arrow keys go from row to row; Page Up and Page Down go 10 rows.',
    /** `Row 33: longest float 22 stitches, too long`, and what the other yarns float over: `slate 3`. */
    row: (
      row: number,
      stitches: number,
      isOver: boolean,
      others: readonly { readonly name: string; readonly stitches: number }[],
    ): string =>
      stitches === 0
        ? `Row ${row}: no float`
        : [
            `Row ${row}: longest float ${n.stitches(stitches)}${isOver ? ', too long' : ''}`,
            ...others.map((other) => `${other.name} ${other.stitches}`),
          ].join('; '),
  },
  group: {
    number: (index: number): string => String(index + 1),
    /** The outermost groups say at which side they are seen when worn. */
    worn: (index: number, side: 'left' | 'right'): string => `${index + 1} · ${side} as worn`,
  },
};
