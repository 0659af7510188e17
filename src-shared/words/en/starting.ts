/** Beginning something new, and the sample that is open at the first start. */
import type { NewPieceKind } from '../../project/index.ts';

type PerKind = { readonly [Kind in NewPieceKind]: string };

export const starting = {
  title: 'New project',
  whatFor: 'What is it for?',
  aims: { motif: 'A motif', piece: 'A piece' },

  piece: 'Piece',
  kinds: { sleeve: 'Sleeve', body: 'Front or back', round: 'Hat or cuff', square: 'Square or scarf' } satisfies PerKind,
  /** What the piece is called to begin with. */
  names: { sleeve: 'sleeve', body: 'front', round: 'hat', square: 'square' } satisfies PerKind,
  /** A piece of which nothing was said yet. */
  plainPiece: 'piece',
  units: 'Measured in',
  widths: {
    sleeve: 'Round the wrist',
    body: 'Width',
    round: 'Round the head or wrist',
    square: 'Width',
  } satisfies PerKind,
  top: 'Round the upper arm',
  length: 'Length',
  hem: 'Depth of a folded hem',
  hemHint: '0 for none',
  seam: 'Seam allowance at each edge, stitches',
  measured: 'Measure it as it will be worn. The seam allowance and the hidden half of a hem are added here.',
  /** Beside the drawing; `hem`: rows of it that fold to the inside and out, or 0. */
  hemRows: (rows: number): string => `The lowest ${rows} rows are the hem, folded in half.`,
  figure: 'The piece as measured',

  motif: 'Motif',
  motifs: { none: 'none yet', draw: 'one to draw' },
  columns: 'Stitches of the motif',
  rows: 'Rows of the motif',
  /** How large a motif of so many stitches and rows comes out at the gauge. */
  motifIs: (size: string, measures: string): string => `**${size}**, knitted ${measures}.`,

  create: 'Create',
  cancel: 'Cancel',
  created: (name: string): string => `${name} is new.`,

  sample: {
    label: 'Sample',
    text: 'This is a sample.',
    more: 'Try what you like on it, or begin your own.',
    tour: 'Take the tour',
    newPiece: 'New piece',
    newMotif: 'New motif',
    readChart: 'Read a chart',
    open: 'Open your own',
    close: 'Close the note on the sample',
    opened: 'The sample is open.',
  },
};
