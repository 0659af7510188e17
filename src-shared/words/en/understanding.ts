/** What the Motif bench says of slips, trims and measuring. Strong numbers are marked; see ../marked.ts. */
import { clippedCopies, type Measure } from '../../motif/repeat/index.ts';
import { numbers as n } from './numbers.ts';

/** What the marks mean that stand on the chart just now; empty where there is none to explain. */
function marks(measured: Measure): string {
  const { stitches, rows } = clippedCopies(measured);
  const shown = [
    measured.step ? 'faint lines, one stepped copy and where the next begins' : '',
    stitches + rows > 0 ? 'dash and dot, where the last copy is cut' : '',
    measured.manyYarns.length > 0 ? 'brackets at row numbers, more than two yarns' : '',
    measured.near ? 'broken corners, the near repeat' : '',
    measured.slips.length > 0 ? 'rings, cells that break it' : '',
  ].filter((mark) => mark !== '');
  return shown.length === 0 ? '' : `On the chart: ${shown.join('; ')}.`;
}

export const understanding = {
  marks,
  slips: {
    next: 'Go to the next cell that breaks the repeat',
    before: 'Go to the cell before that breaks the repeat',
    none: 'No cell breaks the repeat.',
    /** `2 of 5: row 7, stitch 6 is chalk; in its copies it is slate.` */
    at: (at: number, of: number, column: number, row: number, drawn: string, expected: string): string =>
      `${at} of ${of}: row ${row + 1}, stitch ${column + 1} is ${drawn}; in its copies it is ${expected}.`,
    /** Short, for buttons side by side. */
    buttons: { mend: 'Mend', next: 'Next', before: 'Before' },
    buttonsLabel: 'Cells that break the repeat',
  },
  measuring: 'Measuring the chart …',
  trims: {
    title: 'Where the repeat starts',
    hint: 'Each of these leaves one repeat, or the figure alone. One step of undo brings the rest back.',
    choices: {
      'crop-blank-first': 'Blank columns first',
      'crop-blank-last': 'Blank columns last',
      'crop-at-cursor': 'At the cursor',
      'trim-blank': 'Trim blank edges',
    },
    /** `row 4, stitch 7` */
    cursor: (column: number, row: number): string => `row ${row + 1}, stitch ${column + 1}`,
    gives: (width: number, height: number): string => n.size(width, height),
    asDrawn: 'as drawn',
  },
};
